-- Photos that are kept with a garden, by the hash of their bytes; the bytes in base64, which is text on either database.
create table photo (
    garden  varchar(40) not null references garden (id),
    id      varchar(64) not null,
    saved   varchar(40) not null,
    type    varchar(20) not null,
    bytes   bigint      not null,
    content text        not null,
    primary key (garden, id)
);
