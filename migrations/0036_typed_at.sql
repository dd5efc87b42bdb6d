-- When an entry was typed, by the clock of the device it was typed on; that may be wrong, and is never set against ours.
alter table event add column typed_at timestamptz;
