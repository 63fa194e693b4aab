-- One row a garden, with what a list shows; never removed, so that a deleted garden can come back.
create table garden (
    id       varchar(40)  not null primary key,
    name     varchar(200) not null,
    sort_key text         not null,
    revision bigint       not null,
    changed  varchar(40)  not null,
    deleted  integer      not null
);
create index garden_by_name on garden (deleted, sort_key, id);

-- One row a revision, numbered from 1 without gaps; the document is the text as it was given.
create table revision (
    garden   varchar(40)  not null references garden (id),
    number   bigint       not null,
    kind     varchar(10)  not null,
    restored bigint,
    name     varchar(200) not null,
    saved    varchar(40)  not null,
    document text         not null,
    primary key (garden, number)
);
