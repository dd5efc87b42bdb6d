-- On a call about noise the first thing told is which valve it is: the answer names it.
alter table answer
  add column cylinder integer check (cylinder between 1 and 16),
  add column valve text check (valve in ('intake', 'exhaust')),
  add check ((cylinder is null) = (valve is null));
