-- What is kept once for all gardens of a store: price lists, crews, bed types, terms, access standards, each with its revisions.
create table shelf_item (
    id       varchar(40)  not null primary key,
    kind     varchar(12)  not null,
    name     varchar(200) not null,
    revision bigint       not null,
    saved    varchar(40)  not null,
    deleted  integer      not null
);
create table shelf_revision (
    item    varchar(40)  not null references shelf_item (id),
    number  bigint       not null,
    name    varchar(200) not null,
    saved   varchar(40)  not null,
    content text         not null,
    primary key (item, number)
);
-- Which gardens, as they stand, use what, in which revision; read out of their documents.
create table shelf_use (
    garden   varchar(40) not null references garden (id),
    item     varchar(40) not null,
    revision bigint      not null,
    primary key (garden, item)
);
create index shelf_use_by_item on shelf_use (item, garden);
