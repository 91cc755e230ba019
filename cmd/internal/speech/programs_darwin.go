package speech

const install = "the program say is part of the system"

var programs = []program{{name: "say", args: []string{"-f", "-"}, reads: true}}
