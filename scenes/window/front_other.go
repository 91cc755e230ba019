//go:build !js

package window

import "cuesta/scenes/input"

// front has nothing to do where there is no page.
type front struct{}

func (*front) show(*guarded, input.Frame) {}
func (*front) drawn()                     {}

// deviceScale is how many device pixels a nominal pixel has.
func deviceScale(factor float64) float64 { return factor }
