package lapyard.rest;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.MediaType;
import java.lang.annotation.Annotation;

/** Some refusals never reach an exception mapper, such as that of a header nobody can parse; they get a body here. */
final class EmptyErrors implements ContainerResponseFilter {
    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getStatus() < 400 || response.hasEntity()) return;
        Problem problem = Problem.of(response.getStatus(), "the request is not valid HTTP: send it again");
        response.setEntity(problem.json(), new Annotation[0], MediaType.valueOf(Problem.TYPE));
    }
}
