-- An entry that came while a stop stood, and was said to have been read before it: under a stop nothing else that takes turning is kept.
alter table event add column before_stop boolean not null default false;
