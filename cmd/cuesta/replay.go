package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"cuesta/sim"
	"cuesta/sim/record"
)

type replayer struct {
	env
	json bool
}

func replayCommand(e env) *cobra.Command {
	r := &replayer{env: e}
	cmd := &cobra.Command{
		Use:   "replay RECORDING",
		Short: "Run a recording again and say whether it ends where it said it did",
		Long: "Runs a recording again, without a window, and says whether the bench ends where\n" +
			"the recording says it did. If not, it says where the two first differ and exits\n" +
			"with status 1.",
		Example: "  cuesta replay monday.rec",
		Args:    oneRecording,
		RunE:    func(_ *cobra.Command, files []string) error { return r.run(files[0]) },
	}
	cmd.Flags().BoolVar(&r.json, "json", false, "one JSON object a line")
	return cmd
}

func oneRecording(_ *cobra.Command, files []string) error {
	if len(files) != 1 {
		return misreadf("read %d files; name one recording, such as cuesta replay monday.rec", len(files))
	}
	return nil
}

func (r *replayer) run(file string) error {
	rec, err := readRecording(file)
	if err != nil {
		return err
	}
	res, err := record.Replay(rec)
	if err != nil {
		return wrongWords{fmt.Errorf("%s: %w", file, err)}
	}
	if err := r.write(res); err != nil {
		return err
	}
	if !res.Same {
		return fmt.Errorf("%s does not end where it says it did", file)
	}
	return nil
}

// readRecording reads a recording; a file that is none ends the program with
// status 2.
func readRecording(file string) (record.Recording, error) {
	f, err := os.Open(file)
	if err != nil {
		return record.Recording{}, err
	}
	defer f.Close()
	rec, err := record.Read(f)
	var wrong *record.Error
	if errors.As(err, &wrong) {
		return rec, wrongWords{fmt.Errorf("%s: %w", file, err)}
	}
	return rec, err
}

// replayed is the line of replay --json.
type replayed struct {
	Same    bool    `json:"same"`
	Command int     `json:"command,omitempty"` // that differs, from 1
	Tick    int64   `json:"tick"`
	Seconds float64 `json:"seconds"`
	Said    string  `json:"said"`
}

func (r *replayer) write(res record.Result) error {
	if !r.json {
		_, err := fmt.Fprintln(r.out, res)
		return err
	}
	return json.NewEncoder(r.out).Encode(replayed{
		Same: res.Same, Command: res.Entry, Tick: int64(res.Tick),
		Seconds: rounded(float64(res.Tick)/sim.TicksPerSecond, 3), Said: res.String(),
	})
}
