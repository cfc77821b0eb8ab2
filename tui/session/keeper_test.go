package session

import "testing"

func TestKeeperFailing(t *testing.T) {
	c := begin(t)
	c.to("sieve")
	n := c.desk.Ledger.Next()
	c.keep.fail = errFull
	c.press("200", "enter")
	c.says("NOT SAVED: write journal: no space left on device", "200")
	if c.desk.Ledger.Next() != n || c.step() != "sieve" {
		t.Fatal("what was not saved counts")
	}
	c.keep.fail = nil
	c.press("enter")
	if got, _ := c.desk.Ledger.Session().Answer(1, "sieve"); got != "200" {
		t.Errorf("the next try kept %q, want 200", got)
	}
}

func TestKeeperFailingBetweenReadingAndStep(t *testing.T) {
	c := begin(t)
	c.to("from_celsius")
	n := c.desk.Ledger.Next()
	c.keep.fail, c.keep.after = errFull, 1
	c.press("28", "enter")
	c.says("NOT SAVED")
	c.keep.fail = nil
	c.press("enter")
	if got := c.kinds(n); got != "temperature step" {
		t.Errorf("wrote %s, want one reading and its step", got)
	}
}

func TestKeeperFailingAtTheMove(t *testing.T) {
	c := begin(t)
	c.to("rinse")
	n := c.desk.Ledger.Next()
	c.keep.fail, c.keep.after = errFull, 1
	c.press("enter")
	c.says("NOT SAVED")
	c.keep.fail = nil
	c.press("enter")
	if got := c.kinds(n); got != "moved step" {
		t.Errorf("wrote %s, want one move and its step", got)
	}
}

func TestKeeperFailingAtAReason(t *testing.T) {
	c := begin(t)
	c.to("bucket")
	c.press("*")
	c.keep.fail = errFull
	c.press("leaks", "enter")
	c.says("NOT SAVED", "leaks")
	c.keep.fail = nil
	c.press("enter")
	c.says("bucket of move 1 put off: leaks")
}

func TestTypedRubbish(t *testing.T) {
	c := begin(t)
	c.to("from_celsius")
	n := c.desk.Ledger.Next()
	c.press("enter")
	c.says("is not a number")
	c.press("270", "enter")
	c.says("270 cannot be true")
	if c.desk.Ledger.Next() != n {
		t.Error("rubbish was written down")
	}
	c.to("sieve_empty")
	c.press("7", "enter")
	c.says("type a number from 1 to 2")
}
