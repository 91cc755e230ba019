//go:build !windows && !darwin

package speech

const install = "install speech-dispatcher or espeak-ng, such as by: sudo apt-get install espeak-ng"

// programs are those of free desktops, the one first that the desktop has set
// up for the person.
var programs = []program{
	{name: "spd-say", args: []string{"--wait", "--"}, stop: []string{"--cancel"}},
	{name: "espeak-ng", args: []string{"--stdin"}, reads: true},
	{name: "espeak", args: []string{"--stdin"}, reads: true},
}
