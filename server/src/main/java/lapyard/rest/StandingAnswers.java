package lapyard.rest;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lapyard.answers.Answer;
import lapyard.answers.AnswerService;
import lapyard.answers.AnswerService.Standing;
import lapyard.answers.CallerLeft;
import lapyard.answers.GivenDocument;
import lapyard.json.SheetAsk;
import lapyard.store.GardenList;
import lapyard.store.GardenStore;
import lapyard.store.StoreFault;
import lapyard.store.Stored;
import org.glassfish.grizzly.http.Method;
import org.glassfish.grizzly.http.server.Request;
import org.glassfish.grizzly.http.server.Response;

/**
 * Answers that were given already, handed out again before the resources are asked: a garden's document, its job sheet
 * and its drawings as they are asked for without conditions of their own. Each is of one revision. While the store says
 * that nothing was written since, it stands; else, and always where servers share a database, the store is asked for the
 * newest revision first.
 */
record StandingAnswers(Supplier<GardenStore> store, AnswerService answers) {
    private static final System.Logger LOG = System.getLogger("lapyard.rest");
    private static final Pattern EARLY = Pattern.compile("/api/gardens/([a-z0-9-]{1,40})(/job-sheet)?");

    /**
     * @param moment      of the store from before the garden was looked up; empty where it tells none
     * @param tag         the entity tag, in quotes
     * @param disposition empty where there is no such header
     */
    private record Head(OptionalLong moment, String type, String tag, Optional<String> disposition) {
        Head at(OptionalLong other) {
            return new Head(other, type, tag, disposition);
        }
    }

    /**
     * Remembers an answer for its address, unless that has a query.
     *
     * @param key under which the answer is kept
     */
    void keep(URI uri, OptionalLong moment, Stored stored, String key, Answer answer, String type, String tag, Optional<String> disposition) {
        if (uri.getRawQuery() != null) return;
        answers.stands(uri.getRawPath(), new Standing(stored.id(), stored.revision(), key, new Head(moment, type, tag, disposition)), answer);
    }

    /**
     * Looks at the garden that was changed last: it is the likeliest to be asked for first after a start, and every other is made
     * sooner once the program has made one.
     *
     * @return false where a garden was asked for meanwhile, which has the processor
     */
    boolean makeAhead() {
        try {
            GardenList.Ask last = new GardenList.Ask(1, Optional.empty(), GardenList.Place.STANDING, Optional.empty(), List.of(), GardenList.Order.CHANGED);
            return store.get().list(last).rows().stream()
                    .flatMap(row -> store.get().find(row.id()).stream())
                    .allMatch(stored -> answers.makeAhead(GivenDocument.of(stored.document(), stored.id())));
        } catch (CallerLeft gaveWay) {
            return false;
        } catch (RuntimeException cannot) {
            LOG.log(System.Logger.Level.DEBUG, "no job sheet was made ahead", cannot); // whoever asks for it hears why
            return true;
        }
    }

    /** @return whether it answered; where not, nothing was touched */
    boolean serve(String path, Request request, Response response) throws IOException {
        boolean head = request.getMethod().equals(Method.HEAD);
        if (!head && !request.getMethod().equals(Method.GET) || request.getQueryString() != null) return false;
        Optional<Standing> standing = answers.standing(path);
        if (standing.isEmpty()) return false;
        Optional<Answer> answer = answers.answer(standing.get());
        Head known = (Head) standing.get().more();
        if (answer.isEmpty() || !takes(request.getHeader("Accept"), known.type()) || !stands(path, standing.get(), known)) return false;
        if (!path.endsWith("/" + standing.get().garden())) answers.hit();
        response.setHeader("ETag", known.tag());
        known.disposition().ifPresent(how -> response.setHeader("Content-Disposition", how));
        if (Tags.has(request.getHeader("If-None-Match"), known.tag())) {
            response.setStatus(304);
            return true;
        }
        response.setContentType(known.type());
        response.setContentLengthLong(answer.get().length());
        if (!head) response.getOutputStream().write(answer.get().bytes());
        return true;
    }

    private boolean stands(String path, Standing standing, Head known) {
        try {
            OptionalLong now = store.get().moment();
            if (now.isPresent() && now.equals(known.moment())) return true;
            Optional<Stored> newest = store.get().find(standing.garden());
            if (newest.isEmpty() || newest.get().deleted() || newest.get().revision() != standing.revision()) {
                answers.standsNoMore(path);
                return false;
            }
            if (now.isPresent())
                answers.stands(path, new Standing(standing.garden(), standing.revision(), standing.key(), known.at(now)));
            return true;
        } catch (StoreFault away) {
            return false; // the resource says so in its own way
        }
    }

    /**
     * The list as the page first asks for it, and whether the store is well, answered as soon as the store is open: making the
     * resources takes longer than all else of the start.
     *
     * @return whether it answered; where not, nothing was touched
     */
    boolean serveFirst(String path, Request request, Response response) throws IOException {
        boolean list = path.equals("/api/gardens");
        if (!list && !path.equals("/health") || !request.getMethod().equals(Method.GET) || request.getQueryString() != null) return false;
        if (list && Requester.onlyGarden().isPresent() || !takes(request.getHeader("Accept"), "application/json")) return false;
        Listing answer;
        try {
            answer = list ? Listing.of(store.get(), Listing.FIRST) : new Listing(ApiResource.health(store.get()), Optional.empty());
        } catch (StoreFault fault) {
            return false; // the resource says so in its own way
        }
        byte[] body = answer.json().getBytes(StandardCharsets.UTF_8);
        answer.link().ifPresent(link -> response.setHeader("Link", link));
        response.setContentType("application/json");
        response.setContentLength(body.length);
        response.getOutputStream().write(body);
        return true;
    }

    /**
     * A garden's document or its job sheet for whoever asks before the resources are made, as the page does of the garden that
     * it opens.
     *
     * @return whether it answered; where not, nothing was touched
     */
    boolean serveEarly(Request request, Response response) throws IOException {
        Matcher asked = EARLY.matcher(request.getRequestURI());
        if (!request.getMethod().equals(Method.GET) || !asked.matches() || !takes(request.getHeader("Accept"), "application/json")) return false;
        Early early;
        try {
            Optional<Stored> stored = store.get().find(asked.group(1)).filter(found -> !found.deleted());
            if (stored.isEmpty()) return false;
            early = asked.group(2) == null ? new Early(Answer.of(stored.get().document()), Tags.of(stored.get())) : sheet(stored.get(), request);
        } catch (CallerLeft left) {
            throw left;
        } catch (RuntimeException refused) {
            return false; // the resource says so in its own way
        }
        response.setHeader("ETag", early.tag());
        if (Tags.has(request.getHeader("If-None-Match"), early.tag())) {
            response.setStatus(304);
            return true;
        }
        response.setContentType("application/json");
        response.setContentLengthLong(early.answer().length());
        early.answer().writeTo(response.getOutputStream());
        return true;
    }

    private record Early(Answer answer, String tag) {}

    private Early sheet(Stored stored, Request request) {
        SheetAsk ask = QueryParameters.sheet(request.getParameter("parts"), request.getParameter("bed"), request.getParameter("look"));
        GivenDocument document = GivenDocument.of(stored.document(), stored.id());
        QueryParameters.checkBed(ask, document);
        Answer answer = answers.jobSheet(document, ask);
        return new Early(answer, Tags.quoted(answer.tag()));
    }

    /** Whatever is asked for with more thought than this is left to the resources. */
    private static boolean takes(String accept, String type) {
        return accept == null || accept.equals("*/*") || accept.equals(type);
    }
}
