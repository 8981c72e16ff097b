-- How many records of a kind are in use, and which were saved last, without a look at every revision: with 100,000 pieces the
-- count takes 4 ms instead of 620, the sixty clampings saved last 0.1 ms instead of 150.
CREATE INDEX current_by_kind_in_order ON current (kind, sequence);
CREATE INDEX withdrawals ON revisions (kind, sequence) WHERE act = 'withdraw';
