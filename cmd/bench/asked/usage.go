package asked

// Usage is the help.
const Usage = `The bench in a window, with lectures, forms and labs beside it.

  bench [bench] [--plane PLANE] [--seed N]
  bench hall            everything there is, to choose from
  bench lecture LESSON  the name of a lesson, such as two-readings, or its file
  bench form FORM       a form to answer, ID.form.json; each answer is kept at
                        once, and the form goes on where it was left
  bench lab STATIONS    the screen on the table of a lab with real slabs

Flags, before the scene or behind it:
  --plane PLANE   begin with this plane, in any notation, such as 035/30
  --method METHOD edge, lid or sensor: how it is measured
  --seed N        draw the first plane from this whole number
  --size WxH      size of the window, 1280x720 if left out
  --full-screen   fill the screen
  --guest         keep nothing: no progress, no settings
  --announce      write each change of the screen as a line on standard output
  --speak         have it spoken, as the setting Speech does
  --roster FILE   of a lab: the class; others are refused then
  --out DIR       of a lab: where the readings go, readings if left out
  --station NAME  of a lab: the one station that stands beside this screen
  --withhold      of a lab: say nothing about right or wrong

A simulator reading is never data for design.
`
