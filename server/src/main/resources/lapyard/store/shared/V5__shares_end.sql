-- Where a share has no end it lasts until it is taken back, as all did before.
alter table share add column ends varchar(40);
