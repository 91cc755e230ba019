package window

// #cgo pkg-config: alsa
// #include <alsa/asoundlib.h>
//
// static void nothing(const char *file, int line, const char *function, int err, const char *text, ...) {}
// static void hush(void) { snd_lib_error_set_handler(nothing); }
import "C"

// hush keeps the sound library from writing to the terminal where there is no
// device: the scene is told instead.
func hush() { C.hush() }
