-- The list stands in the same order whatever language the database was made for.
alter table garden alter column sort_key type text collate "C";
alter table garden alter column id type varchar(40) collate "C";
