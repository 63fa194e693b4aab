-- A revision with a stamp or a print is never thinned out; the others may be, so numbers have gaps from here on.
alter table revision add column stamp varchar(100);
alter table revision add column printed integer default 0 not null;

-- Who holds a share may read one garden. Only the hash of its token is kept.
create table share (
    id     varchar(40)  not null primary key,
    garden varchar(40)  not null references garden (id),
    hash   varchar(64)  not null unique,
    label  varchar(100) not null,
    made   varchar(40)  not null
);
create index share_by_garden on share (garden, made, id);
