-- The nominal ratios that a shop sells are read with every build: a part's name is weighed among them.
create index part_family_ratio on part_family (shop_id, nominal_ratio);
