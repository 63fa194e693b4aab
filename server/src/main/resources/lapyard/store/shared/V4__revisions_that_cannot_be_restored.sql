-- A file may bring in revisions that hold a STOP: they stay to be read, and are marked, as they cannot be restored.
alter table revision add column refused integer default 0 not null;
