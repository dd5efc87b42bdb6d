-- With a lash that a shim sets: the shim that was in when the gap was read, or was left in.
alter table lash_log
  add column shim_typed text,
  add column shim_value double precision,
  add column shim_unit text,
  add column shim_read_as text,
  add check ((shim_value is null) = (shim_unit is null)),
  add check ((shim_value is null) = (shim_read_as is null)),
  add check ((shim_value is null) = (shim_typed is null));

-- A cylinder may have several valves of a kind; the first of each keeps its name.
alter table answer drop constraint answer_valve_check;
alter table answer add constraint answer_valve_check check (valve ~ '^(intake|exhaust)(-[2-3])?$');
alter table arm_placement drop constraint arm_placement_valve_check;
alter table arm_placement add constraint arm_placement_valve_check check (valve ~ '^(intake|exhaust)(-[2-3])?$');
alter table gap_scan drop constraint gap_scan_valve_check;
alter table gap_scan add constraint gap_scan_valve_check check (valve ~ '^(intake|exhaust)(-[2-3])?$');
alter table set_up drop constraint set_up_valve_check;
alter table set_up add constraint set_up_valve_check check (valve ~ '^(intake|exhaust)(-[2-3])?$');
alter table tip_mark drop constraint tip_mark_valve_check;
alter table tip_mark add constraint tip_mark_valve_check check (valve ~ '^(intake|exhaust)(-[2-3])?$');
alter table valve_reading drop constraint valve_reading_valve_check;
alter table valve_reading add constraint valve_reading_valve_check check (valve ~ '^(intake|exhaust)(-[2-3])?$');
