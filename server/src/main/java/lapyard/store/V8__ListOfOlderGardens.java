package lapyard.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.flywaydb.core.api.migration.BaseJavaMigration;
import org.flywaydb.core.api.migration.Context;

/** Gardens that were kept before lists showed client and state get both from their documents. */
public final class V8__ListOfOlderGardens extends BaseJavaMigration {
    @Override
    public void migrate(Context context) throws SQLException {
        Connection connection = context.getConnection();
        List<String> ids = new Sql(connection, "select id from garden").all(row -> row.text("id"));
        for (String id : ids) {
            Listed listed = new Sql(connection, "select g.name, r.document from garden g join revision r on r.garden = g.id and r.number = g.revision where g.id = :id")
                    .with("id", id).first(row -> Listed.of(row.text("name"), row.text("document"))).orElseThrow();
            listed.bind(new Sql(connection, "update garden set client = :client, client_key = :clientKey, state = :state where id = :id"))
                    .with("id", id).update();
        }
    }
}
