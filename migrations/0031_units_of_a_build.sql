-- Which units the calls about a build are spoken in; what is measured is kept as it was entered either way.
alter table build
  add column units text not null default 'inch' check (units in ('inch', 'metric'));
