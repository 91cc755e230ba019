package rock

// bed is one layer of the stone.
type bed struct {
	top, bottom float64
	tone        float64 // 0 dark to 1 light
	cool        float64 // share of the grey tone
	proud       float64 // how far the weather has left it standing out, cm
	cross       float64 // slope of the inclined laminae inside it, 0 for none
}

// beds lists the layers from the top surface down past the depth asked for:
// mostly thin, now and then a thick one.
func beds(n noise, depth float64) []bed {
	var list []bed
	for y, i := 0.0, 0; y < depth; i++ {
		thick := 0.08 + 0.17*n.at(i, 1)
		massive := i > 0 && i%4 == int(4*n.at(i/4, 2))
		if massive {
			thick = 0.55 + 0.6*n.at(i, 1)
		}
		b := bed{top: y, bottom: y + thick, tone: n.at(i, 3), proud: 0.07 * n.at(i, 4)}
		if n.at(i, 5) < 0.32 {
			b.cool = 0.7
		}
		if massive {
			// Pale sand and grey silt take turns.
			b.tone, b.cool = 0.72+0.28*b.tone, 0
			if i/4%2 == 1 {
				b.tone, b.cool = 0.5, 0.55
			}
			b.proud += 0.06
			b.cross = 0.55 - 1.1*float64(i&1)
		}
		if i == 0 {
			b = bed{bottom: thick, tone: 0.85, proud: 0.05} // the bed whose surface is the top
		}
		list = append(list, b)
		y += thick
	}
	return list
}

// find returns the index of the bed at a depth.
func find(list []bed, depth float64) int {
	for i := range list {
		if depth < list[i].bottom {
			return i
		}
	}
	return len(list) - 1
}
