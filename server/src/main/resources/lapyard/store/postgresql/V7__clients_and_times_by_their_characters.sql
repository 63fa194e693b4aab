-- As names: the same order whatever language the database was made for.
alter table garden alter column client_key type text collate "C";
alter table garden alter column changed type varchar(40) collate "C";
