package browse

import (
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Keys types keys one after the other, as a keyboard does; those without a sign
// are the runes of chromedp/kb.
func (t *Tab) Keys(keys string) error { return chromedp.Do(t.ctx, chromedp.KeyEvent(keys)) }

// ShiftTab goes one control back.
func (t *Tab) ShiftTab() error {
	return chromedp.Do(t.ctx, chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift)))
}
