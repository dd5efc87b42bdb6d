-- On a shaft or a pedestal the height of the stand moves a mark, not the pushrod: what was under it when it was made.
alter table tip_mark
  add column shims_typed text,
  add column shims_value double precision,
  add column shims_unit text,
  add column shims_read_as text,
  add check ((shims_value is null) = (shims_unit is null)),
  add check ((shims_value is null) = (shims_read_as is null)),
  add check ((shims_value is null) = (shims_typed is null));
