-- Many gardens are found by client and state, in several orders, a page at a time; an archived one leaves the list.
alter table garden add column client varchar(200) default '' not null;
alter table garden add column client_key text default '' not null;
alter table garden add column state integer default 0 not null;
alter table garden add column archived integer default 0 not null;
-- times as text stand in their order where all have their milliseconds
update garden set changed = replace(changed, 'Z', '.000Z') where length(changed) = 20;
drop index garden_by_name;
create index garden_by_name on garden (deleted, archived, sort_key, id);
create index garden_by_change on garden (deleted, archived, changed, id);
create index garden_by_client on garden (deleted, archived, client_key, sort_key, id);
create index garden_by_state on garden (deleted, archived, state, sort_key, id);
