package form

import (
	"fmt"
	"math/rand/v2"

	"cuesta/quiz/item"
)

// itemStream tells the draw of an item from other uses of the same seed.
const itemStream = 0x9e3779b97f4a7c15

// ItemOf deals the item that a seed stands for in a part. The error says that
// there is no such kind, or what the kind could not do.
func ItemOf(p Part, seed uint64) (item.Item, error) {
	k, ok := item.KindNamed(p.Kind)
	if !ok {
		return nil, fmt.Errorf("there is no kind of item %s", shortened(p.Kind))
	}
	return k.Deal(p.Spec, rand.New(rand.NewPCG(seed, itemStream)))
}

// Part is the part of the blueprint that item i belongs to.
func (f Form) Part(i int) Part { return f.Blueprint.Parts[f.Items[i].Part] }

// Item deals item i, from 0.
func (f Form) Item(i int) (item.Item, error) {
	if i < 0 || i >= len(f.Items) || f.Items[i].Part < 0 || f.Items[i].Part >= len(f.Blueprint.Parts) {
		return nil, fmt.Errorf("the form has no item %d", i+1)
	}
	it, err := ItemOf(f.Part(i), f.Items[i].Seed)
	if err != nil {
		return nil, fmt.Errorf("item %d: %w", i+1, err)
	}
	return it, nil
}

// All deals all the items of the form.
func (f Form) All() ([]item.Item, error) {
	all := make([]item.Item, len(f.Items))
	for i := range all {
		it, err := f.Item(i)
		if err != nil {
			return nil, err
		}
		all[i] = it
	}
	return all, nil
}

// Points is the sum of the points of the items.
func (b Blueprint) Points() float64 {
	sum := 0.0
	for _, p := range b.Parts {
		sum += float64(p.Count) * p.Points
	}
	return sum
}

// Slots is the part of each item of a form, in their order.
func (b Blueprint) Slots() []int {
	var slots []int
	for i, p := range b.Parts {
		for range p.Count {
			slots = append(slots, i)
		}
	}
	return slots
}
