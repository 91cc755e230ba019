package form

import "sort"

// sum is the difficulty of a student's form.
func (c *class) sum(student int) float64 {
	sum := 0.0
	for _, it := range c.items[student] {
		sum += it.item.Difficulty()
	}
	return sum
}

// share gives the items of the pools out, place by place, those that differ
// most first: the hardest item of a place goes to the form that is easiest so
// far. So no two forms differ by more than two items of one place do.
func (c *class) share(pools [][]drawn) {
	sums := make([]float64, len(c.items))
	order := append([]int(nil), c.fresh...)
	for n, slot := range byRange(pools) {
		pool := append([]drawn(nil), pools[slot]...)
		if n > 0 {
			sort.SliceStable(order, func(i, j int) bool { return sums[order[i]] < sums[order[j]] })
			sort.SliceStable(pool, func(i, j int) bool { return pool[i].item.Difficulty() > pool[j].item.Difficulty() })
		}
		for i, student := range order {
			c.items[student][slot] = pool[i]
			sums[student] += pool[i].item.Difficulty()
		}
	}
}

// byRange are the places on the form, those whose items differ most in
// difficulty first.
func byRange(pools [][]drawn) []int {
	spread := make([]float64, len(pools))
	order := make([]int, len(pools))
	for i, pool := range pools {
		order[i] = i
		least, most := 1.0, 0.0
		for _, p := range pool {
			least, most = min(least, p.item.Difficulty()), max(most, p.item.Difficulty())
		}
		spread[i] = most - least
	}
	sort.SliceStable(order, func(i, j int) bool { return spread[order[i]] > spread[order[j]] })
	return order
}

// settleDraws is how many items are tried in one place to mend a form.
const settleDraws = 60

// settle draws single items again: those that are near another one of the same
// form, and those of forms that are too hard or too easy.
func (c *class) settle() {
	for _, student := range c.fresh {
		for slot := range c.dealer.slots {
			if c.twice(student, slot, c.items[student][slot]) {
				c.redraw(student, slot, func(next drawn) bool { return true })
			}
		}
		c.level(student)
	}
}

// level brings the difficulty of a form to the average of the blueprint.
func (c *class) level(student int) {
	for range 2 {
		for slot := range c.dealer.slots {
			off := abs(c.sum(student) - c.dealer.target)
			if off <= MostSpread/2 {
				return
			}
			rest := c.sum(student) - c.items[student][slot].item.Difficulty() - c.dealer.target
			for range 4 {
				if !c.redraw(student, slot, func(next drawn) bool { return abs(rest+next.item.Difficulty()) < off }) {
					break
				}
				off = abs(c.sum(student) - c.dealer.target)
			}
		}
	}
}

// redraw takes another item in a place: one that is no nearer to those of
// others, near none of the same form, and wanted. It says whether there was
// one.
func (c *class) redraw(student, slot int, wanted func(drawn) bool) bool {
	now := c.nearOthers(student, slot, c.items[student][slot].item)
	for range settleDraws {
		next, err := c.draw(slot)
		if err != nil {
			return false // the item at hand stays
		}
		if wanted(next) && !c.twice(student, slot, next) && c.nearOthers(student, slot, next.item) <= now {
			c.items[student][slot] = next
			return true
		}
	}
	return false
}

// twice says whether the form would ask for the same plane in two places.
func (c *class) twice(student, slot int, next drawn) bool {
	if !isPlane(next.item) {
		return false
	}
	for i, other := range c.items[student] {
		if i != slot && c.dealer.slots[i] == c.dealer.slots[slot] && (next.item.Near(other.item) || other.item.Near(next.item)) {
			return true
		}
	}
	return false
}

func abs(x float64) float64 { return max(x, -x) }
