-- The nominal ratios that a shop sells are read with every build: a part's name is weighed among them.
create index part_family_ratio on part_family (shop_id, nominal_ratio);

-- Which question of the assessment was answered: one about a valve or a part has no set-up to be known by.
alter table answer add column question_id text check (char_length(question_id) between 1 and 400);
