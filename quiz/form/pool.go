package form

import (
	"fmt"
	"sync"

	"cuesta/quiz/item"
)

// How many draws are tried for one student before a class is found to be too
// large for an item, or its answers are shared.
const (
	planeDraws = 2000
	otherDraws = 48
)

// class is the items of a class: items[student][place].
type class struct {
	name   string
	dealer *dealer
	seeds  []*seeds // of each place
	items  [][]drawn
	kept   [][]drawn // the items that stay as they were dealt before, of students first to last
	fresh  []int     // the students who have none yet
	tight  []bool    // of each place: there were fewer answers than students
}

// class deals a class, of which the forms that are not nil stay.
func (d *dealer) class(name string, stay []*Form) (*class, error) {
	n := len(stay)
	c := &class{name: name, dealer: d, items: make([][]drawn, n), tight: make([]bool, len(d.slots))}
	if err := c.seat(stay); err != nil {
		return nil, err
	}
	for slot := range d.slots {
		c.seeds = append(c.seeds, seedsOf(d.options.Seed, "class "+name, slot))
	}
	pools, err := c.pools(len(c.fresh))
	if err != nil {
		return nil, err
	}
	c.share(pools)
	c.settle()
	d.done += n
	return c, nil
}

// seat gives those their items who have them already.
func (c *class) seat(stay []*Form) error {
	for i, f := range stay {
		c.items[i] = make([]drawn, len(c.dealer.slots))
		if f == nil {
			c.fresh = append(c.fresh, i)
			continue
		}
		all, err := f.All()
		if err != nil {
			return err
		}
		for slot, it := range all {
			c.items[i][slot] = drawn{f.Items[slot].Seed, it}
		}
		c.kept = append(c.kept, c.items[i])
	}
	return nil
}

// keptAt are the items of a place that stay.
func (c *class) keptAt(slot int) []drawn {
	out := make([]drawn, len(c.kept))
	for i, items := range c.kept {
		out[i] = items[slot]
	}
	return out
}

// pools draws the items of all places, side by side: every place has seeds of
// its own, so that the outcome does not depend on which is done first.
func (c *class) pools(n int) ([][]drawn, error) {
	slots := len(c.dealer.slots)
	pools, errs := make([][]drawn, slots), make([]error, slots)
	var wait sync.WaitGroup
	var report sync.Mutex
	done := 0
	for slot := range slots {
		wait.Go(func() {
			pools[slot], errs[slot] = c.pool(slot, n)
			report.Lock()
			defer report.Unlock()
			done++
			c.dealer.report(done, n)
		})
	}
	wait.Wait()
	for _, err := range errs {
		if err != nil {
			return nil, err // that of the first place
		}
	}
	return pools, nil
}

// report tells the progress within a class.
func (d *dealer) report(slots, students int) {
	if d.options.Progress != nil {
		d.options.Progress(d.done+students*slots/len(d.slots), d.students)
	}
}

// isPlane says whether an item asks for a plane, which no two students share.
func isPlane(it item.Item) bool {
	switch it.Ask().Kind {
	case item.AskPlane, item.AskSymbol:
		return true
	case item.AskNumber, item.AskChoice, item.AskLine:
	}
	return false
}

// pool draws as many items for a place as there are students without, apart from
// those that stay.
func (c *class) pool(slot, n int) ([]drawn, error) {
	pool := c.keptAt(slot)
	stay := len(pool)
	for len(pool) < stay+n {
		next, shared, err := c.apart(slot, pool)
		if err != nil {
			return nil, err
		}
		if shared > 0 && isPlane(next.item) {
			p := c.dealer.blueprint.Parts[c.dealer.slots[slot]]
			return nil, &RoomError{Item: slot + 1, Kind: p.Kind, Class: c.name, Fit: len(pool), Students: stay + n}
		}
		c.tight[slot] = c.tight[slot] || shared > 0
		pool = append(pool, next)
	}
	return pool[stay:], nil
}

// apart draws an item that is near none of the pool, or after many draws the
// one that is near the fewest.
func (c *class) apart(slot int, pool []drawn) (drawn, int, error) {
	var best drawn
	least := len(pool) + 1
	for try, draws := 0, otherDraws; try < draws && least > 0; try++ {
		next, err := c.draw(slot)
		if err != nil {
			return drawn{}, 0, err
		}
		if isPlane(next.item) {
			draws = planeDraws
		}
		if n := nearAmong(next.item, pool, least); n < least {
			best, least = next, n
		}
	}
	return best, least, nil
}

func (c *class) draw(slot int) (drawn, error) {
	seed := c.seeds[slot].next()
	it, err := ItemOf(c.dealer.blueprint.Parts[c.dealer.slots[slot]], seed)
	if err != nil {
		return drawn{}, fmt.Errorf("item %d: %w", slot+1, err)
	}
	return drawn{seed, it}, nil
}

// nearAmong counts those of the pool that are near an item, up to a limit.
func nearAmong(it item.Item, pool []drawn, limit int) int {
	n := 0
	for _, p := range pool {
		if it.Near(p.item) || p.item.Near(it) {
			if n++; n >= limit {
				return n
			}
		}
	}
	return n
}

// shared tells which places have answers that are shared.
func (c *class) shared() []Shared {
	var all []Shared
	for slot := range c.dealer.slots {
		s := Shared{Item: slot + 1, Class: c.name}
		for i := range c.items {
			if c.tight[slot] && c.nearOthers(i, slot, c.items[i][slot].item) > 0 {
				s.Students++
			}
		}
		if s.Students > 0 {
			all = append(all, s)
		}
	}
	return all
}

// nearOthers counts the students whose item in a place is near it.
func (c *class) nearOthers(student, slot int, it item.Item) int {
	n := 0
	for i := range c.items {
		if other := c.items[i][slot].item; i != student && (it.Near(other) || other.Near(it)) {
			n++
		}
	}
	return n
}
