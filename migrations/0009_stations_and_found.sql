-- A valve lift read at a stated lobe lift instead of at its peak, and whether the small hand was looked at for a
-- reading: both decide what the reading can tell.
alter table reading add column at_typed text;
alter table reading add column at_value double precision;
alter table reading add column at_unit text;
alter table reading add column at_read_as text;
alter table reading add column counted boolean not null default false;
alter table reading add constraint reading_station_check
  check ((kind = 'valve-lift-at') = (at_value is not null) and (at_value is null) = (at_unit is null)
    and (at_value is null) = (at_typed is null) and (at_value is null) = (at_read_as is null));

-- What was asked, by its own word beside the sentence that was shown, and whether anything was found wrong.
alter table answer add column code text not null default '' check (code ~ '^[a-z0-9-]{0,60}$');
alter table answer add column found boolean;
