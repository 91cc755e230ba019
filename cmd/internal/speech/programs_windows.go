package speech

const install = "the program powershell is part of the system"

// speakInput says what comes by the input, through the speech interface of the
// system. No text is part of the command.
const speakInput = "[Console]::InputEncoding = [Text.Encoding]::UTF8; Add-Type -AssemblyName System.Speech; " +
	"(New-Object System.Speech.Synthesis.SpeechSynthesizer).Speak([Console]::In.ReadToEnd())"

var programs = []program{{name: "powershell", args: []string{"-NoProfile", "-NonInteractive", "-Command", speakInput}, reads: true}}
