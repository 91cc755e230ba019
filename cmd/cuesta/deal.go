package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"cuesta/orient/geomag"
	"cuesta/quiz/form"
	"cuesta/quiz/sitting"
)

// keyFolder is the folder of the instructor, apart from the forms.
const keyFolder = "key"

type dealer struct {
	env
	roster, folder, seed string
	example, force, add  bool
	stay                 int // forms that stay as they were dealt, before all others
}

func dealCommand(e env) *cobra.Command {
	d := &dealer{env: e}
	cmd := &cobra.Command{
		Use:        "deal BLUEPRINT.toml --roster ROSTER.csv --out DIR",
		SuggestFor: []string{"quiz", "forms"},
		Short:      "A form for every student, each with planes of its own",
		Long: "Deals a form to every student of the roster into DIR, and the key to all of them\n" +
			"into DIR/key: hand out the forms, keep that folder. The roster is a CSV file whose\n" +
			"first line names its columns: id,name and, if wanted, extra_time, a factor on the\n" +
			"time limit, and class.\n\n" +
			"Two students of one class share no plane, and all forms are equally hard: they are\n" +
			"dealt together. So the same blueprint, roster and seed give the same files, and a\n" +
			"line more or less in the roster, or another order, gives everybody others. Deal\n" +
			"once. For late-comers write --add: the forms in DIR stay, and those of the roster\n" +
			"who have none are dealt one, apart from them. A student who leaves needs no new\n" +
			"deal, nor does a name that was wrong.\n\n" +
			"A form holds what the simulation needs: who can program can find the answers in\n" +
			"it. Where that matters, let the quiz be sat under supervision.",
		Example: "  cuesta deal --example > quiz.toml\n" +
			"  cuesta deal quiz.toml --roster class.csv --out forms\n" +
			"  cuesta deal quiz.toml --roster late.csv --out forms --add",
		Args: d.words,
		RunE: func(_ *cobra.Command, files []string) error { return d.run(files) },
	}
	f := cmd.Flags()
	f.StringVar(&d.roster, "roster", "", "the students, a CSV file")
	f.StringVar(&d.folder, "out", "", "folder for the forms and the key")
	f.StringVar(&d.seed, "seed", "", "whole number that all is drawn from (that of the blueprint)")
	f.BoolVar(&d.example, "example", false, "print a blueprint with remarks, to start from")
	f.BoolVar(&d.force, "force", false, "replace files that are there, unless a student has begun with one that would change")
	f.BoolVar(&d.add, "add", false, "deal to those who have no form in DIR yet; the others keep theirs")
	return cmd
}

func (d *dealer) words(_ *cobra.Command, files []string) error {
	switch {
	case d.example && len(files) > 0:
		return misreadf("read %q beside --example; it stands alone", files[0])
	case !d.example && len(files) != 1:
		return misreadf("read %d blueprints; name one, such as cuesta deal quiz.toml --roster class.csv --out forms (--example prints one)", len(files))
	case !d.example && d.roster == "":
		return misreadf("read no roster; write --roster and a CSV file with the columns id,name")
	case d.add && d.force:
		return misreadf("read --add and --force; --add keeps the forms that are there, --force replaces them: write one of them")
	case !d.example && d.folder == "":
		return misreadf("read no folder for the forms; write --out and its name")
	}
	return nil
}

func (d *dealer) run(files []string) error {
	if d.example {
		_, err := io.WriteString(d.out, form.Example())
		return err
	}
	b, err := readFile(d.env, files[0], form.ReadBlueprint)
	if err != nil {
		return err
	}
	if b.Seed, err = d.seedOf(b); err != nil {
		return err
	}
	students, err := readFile(d.env, d.roster, form.ReadRoster)
	if err != nil {
		return err
	}
	kept, students, err := d.kept(students)
	if err != nil {
		return err
	}
	d.stay = len(kept)
	if err := d.free(students[d.stay:]); err != nil {
		return err
	}
	dealing, err := form.Deal(b, students, form.Options{Seed: b.Seed, Kept: kept, Progress: progress(d.err, "dealt")})
	if errors.Is(err, form.ErrKept) {
		return misreadf("--add keeps the forms of %s; they were dealt from another blueprint or seed than %s holds", d.folder, files[0])
	}
	if err != nil {
		return err
	}
	if err := d.begun(dealing); err != nil {
		return err
	}
	if err := d.write(dealing); err != nil {
		return err
	}
	return d.tell(dealing)
}

// mostSeed is the greatest seed that every reader of JSON keeps whole.
const mostSeed = 1<<53 - 1

func (d *dealer) seedOf(b form.Blueprint) (uint64, error) {
	if d.seed == "" {
		return b.Seed, nil
	}
	n, err := strconv.ParseUint(d.seed, 10, 64)
	if err != nil || n > mostSeed {
		return 0, misreadf("--seed read %q; write a whole number from 0 to %d, such as --seed 7", d.seed, uint64(mostSeed))
	}
	return n, nil
}

// free says early whether a file stands in the way.
func (d *dealer) free(students []form.Student) error {
	switch info, err := os.Lstat(d.folder); {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case info.Mode().IsRegular():
		return misreadf("--out %s is a file; name a folder", d.folder)
	case d.force:
		return nil
	}
	var paths []string
	if !d.add {
		paths = append(paths, filepath.Join(d.folder, keyFolder))
	}
	for _, s := range students {
		paths = append(paths, filepath.Join(d.folder, form.FileName(s.ID)+form.FormEnding))
	}
	for _, p := range paths {
		switch _, err := os.Lstat(p); {
		case err == nil && d.add:
			return alreadyThere(p)
		case err == nil:
			return fmt.Errorf("%w; --add deals to late-comers alone", alreadyThere(p))
		}
	}
	return nil
}

// kept are the forms that stay, and the roster with their students first.
func (d *dealer) kept(students []form.Student) ([]form.Form, []form.Student, error) {
	if !d.add {
		return nil, students, nil
	}
	k, err := readFile(d.env, filepath.Join(d.folder, keyFolder, "key.json"), form.DecodeKey)
	if err != nil {
		return nil, nil, err
	}
	forms := k.Dealt()
	has := make(map[string]bool, len(forms))
	var all []form.Student
	for _, f := range forms {
		has[f.Student.ID] = true
		all = append(all, f.Student)
	}
	for _, s := range students {
		if !has[s.ID] {
			all = append(all, s)
		}
	}
	if len(all) == len(forms) {
		return nil, nil, misreadf("--add found a form in %s for everyone on the roster", d.folder)
	}
	return forms, all, nil
}

// begun refuses to replace a form that a student has begun to answer.
func (d *dealer) begun(dealing form.Dealing) error {
	if !d.force {
		return nil
	}
	var who []string
	for _, f := range dealing.Forms {
		path := filepath.Join(d.folder, form.FileName(f.Student.ID))
		if !anyThere(path+sitting.Ending, path+form.SubmissionEnding) {
			continue
		}
		if old, err := readFile(d.env, path+form.FormEnding, form.DecodeForm); err != nil || old.Code != f.Code {
			who = append(who, f.Student.ID)
		}
	}
	if len(who) == 0 {
		return nil
	}
	return fmt.Errorf("the forms of %s would change, and their answers lie in %s; nothing was replaced: move these away first, or deal to late-comers alone with --add",
		strings.Join(who, ", "), d.folder)
}

func anyThere(paths ...string) bool {
	for _, p := range paths {
		if _, err := os.Lstat(p); err == nil {
			return true
		}
	}
	return false
}

// write writes everything beside the folder first, so that a full disk leaves
// nothing half done.
func (d *dealer) write(dealing form.Dealing) (err error) {
	if err := os.MkdirAll(d.folder, 0o755); err != nil {
		return err
	}
	stage, err := os.MkdirTemp(d.folder, ".deal-*")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(stage)) }()
	names, err := d.stage(stage, dealing)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Join(d.folder, keyFolder), 0o700); err != nil {
		return err
	}
	for _, name := range names {
		if err := putInPlace(filepath.Join(stage, name), filepath.Join(d.folder, name), d.force || d.add && filepath.Dir(name) == keyFolder); err != nil {
			return err
		}
	}
	return nil
}

// fresh are the forms that are not there yet; students first to last.
func (d *dealer) fresh(dealing form.Dealing) []form.Form { return dealing.Forms[d.stay:] }

// stage fills a folder and names its files.
func (d *dealer) stage(dir string, dealing form.Dealing) ([]string, error) {
	var names []string
	put := func(name string, fill func(io.Writer) error) error {
		names = append(names, name)
		return fileIn(filepath.Join(dir, name), fill)
	}
	for _, f := range d.fresh(dealing) {
		if err := put(form.FileName(f.Student.ID)+form.FormEnding, f.Encode); err != nil {
			return nil, err
		}
	}
	k, err := form.KeyOf(dealing.Forms)
	if err != nil {
		return nil, err
	}
	if err := os.Mkdir(filepath.Join(dir, keyFolder), 0o700); err != nil {
		return nil, err
	}
	err = errors.Join(
		put(filepath.Join(keyFolder, "key.csv"), k.WriteCSV),
		put(filepath.Join(keyFolder, "key.json"), k.Encode))
	return names, err
}

func fileIn(path string, fill func(io.Writer) error) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if err != nil {
		return err
	}
	return errors.Join(fill(f), f.Close())
}

// tell says what was dealt and what to do next.
func (d *dealer) tell(dealing form.Dealing) error {
	for _, remark := range sharing(dealing) {
		fmt.Fprintln(d.err, remark)
	}
	if n := d.strangers(dealing); n > 0 {
		fmt.Fprintf(d.err, "%d other forms lie in %s; they belong to another deal and to no line of this key\n", n, d.folder)
	}
	if dealing.Spread > form.MostSpread {
		fmt.Fprintf(d.err, "the forms differ by %.2f in difficulty, where at most %.2f is aimed at; more items, or a narrower range of dips, would bring them closer\n", dealing.Spread, form.MostSpread)
	}
	for _, doubt := range doubts(dealing.Forms[0].Blueprint, time.Now()) {
		fmt.Fprintln(d.err, doubt)
	}
	fresh := d.fresh(dealing)
	if d.stay > 0 {
		fmt.Fprintf(d.out, "%s stay as they were dealt.\n", counted(d.stay, "form"))
	}
	_, err := fmt.Fprintf(d.out, "%s of %d items in %s, the key in %s.\n"+
		"The sums of difficulty differ by %.2f at most (an item counts from 0 to 1).\n"+
		"Hand out the forms; keep the key. A student answers with: cuesta take %s\n",
		counted(len(fresh), "form"), len(dealing.Forms[0].Items), d.folder, filepath.Join(d.folder, keyFolder), dealing.Spread,
		filepath.Join(d.folder, form.FileName(fresh[0].Student.ID)+form.FormEnding))
	return err
}

// doubts are what a blueprint says that can hardly be meant: a field far from
// the years of its model, a quiz that was due before it is dealt.
func doubts(b form.Blueprint, now time.Time) []string {
	var out []string
	if due, err := time.Parse(time.RFC3339, b.Due); err == nil && due.Before(now) {
		out = append(out, "the quiz was due on "+b.Due+", which is over: nobody can answer these forms any more")
	}
	if b.Site == "" {
		return out
	}
	site, err := geomag.ParseSite(b.Site)
	if err != nil {
		return out
	}
	year, err := geomag.ParseYear(b.Date)
	if err != nil {
		return out
	}
	if f, err := geomag.At(site, year); err == nil {
		for _, w := range f.Caution.Words() {
			out = append(out, "the field at the place: "+w)
		}
	}
	return out
}

// strangers counts the forms in the folder that were not dealt now.
func (d *dealer) strangers(dealing form.Dealing) int {
	there, _ := filepath.Glob(filepath.Join(d.folder, "*"+form.FormEnding)) // a name that is no pattern finds nothing
	mine := make(map[string]bool, len(dealing.Forms))
	for _, f := range dealing.Forms {
		mine[form.FileName(f.Student.ID)+form.FormEnding] = true
	}
	n := 0
	for _, path := range there {
		if !mine[filepath.Base(path)] {
			n++
		}
	}
	return n
}

// sharing says, item by item, how many students share an answer.
func sharing(dealing form.Dealing) []string {
	students, classes := map[int]int{}, map[int]int{}
	for _, s := range dealing.Shared {
		students[s.Item] += s.Students
		classes[s.Item]++
	}
	var remarks []string
	for i := 1; i <= len(dealing.Forms[0].Items); i++ {
		if students[i] == 0 {
			continue
		}
		where := "there are students"
		if classes[i] > 1 {
			where = fmt.Sprintf("%d classes have students", classes[i])
		}
		remarks = append(remarks, fmt.Sprintf("item %d (%s) has fewer answers than %s: %d of %d share theirs with another one",
			i, dealing.Forms[0].Part(i-1).Kind, where, students[i], len(dealing.Forms)))
	}
	return remarks
}

// showFrom is the number of steps from which progress is shown.
const showFrom = 500

// progress tells every tenth of a long piece of work.
func progress(to io.Writer, verb string) func(done, total int) {
	told := 0
	return func(done, total int) {
		if tenth := done * 10 / max(1, total); total >= showFrom && tenth > told {
			told = tenth
			fmt.Fprintf(to, "%s %d of %d\n", verb, done, total)
		}
	}
}
