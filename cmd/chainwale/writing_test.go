package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"chainwale/testdata/outside/tool"
)

// TestWriting follows rules/WRITING.md word by word in an empty folder: the files that
// it shows are written, the commands run as programs of their own, and what stands
// under a command must come out of it.
func TestWriting(t *testing.T) {
	if testing.Short() {
		t.Skip("whole programs; what they call is tested in one piece besides")
	}
	text, err := os.ReadFile("../../rules/WRITING.md")
	if err != nil {
		t.Fatal(err)
	}
	w := newWalk(t)
	w.follow(string(text))
	if w.ran < 8 || w.written < 3 {
		t.Errorf("only %d commands were run and %d files written", w.ran, w.written)
	}
}

// TestChecking follows rules/CHECKING.md in the same way: from an empty folder to a
// class whose changes are judged, in a repository that is thrown away.
func TestChecking(t *testing.T) {
	if testing.Short() {
		t.Skip("whole programs; what they call is tested in one piece besides")
	}
	tool.Need(t, "git")
	text, err := os.ReadFile("../../rules/CHECKING.md")
	if err != nil {
		t.Fatal(err)
	}
	w := newWalk(t)
	w.follow(string(text))
	if w.ran < 12 || w.written < 3 {
		t.Errorf("only %d commands were run and %d files written", w.ran, w.written)
	}
}

// TestWalkRunsGit: a walk-through may keep its files in a repository, which is thrown
// away with its folder and knows nothing of whoever runs the test.
func TestWalkRunsGit(t *testing.T) {
	tool.Need(t, "git")
	newWalk(t).follow("```yaml boats/a.yaml\na: b\n```\n\n```console\n$ git init --quiet boats\n$ cd boats\n$ git add a.yaml\n" +
		"$ git commit --quiet --message 'First words'\n$ git log --format=%s,%an\nFirst words,A Surveyor\n$ git status --short\n$ git diff --exit-code\n```\n")
}

// TestWalkNotices holds that the walk fails where a page promises too much.
func TestWalkNotices(t *testing.T) {
	for name, text := range map[string]string{
		"other words":       "```console\n$ chainwale --version\nchainwale 0.0.0\n```\n",
		"a status":          "```console\n$ chainwale pack prove nowhere\n[…]\n```\n",
		"another status":    "```console\n$ chainwale pack prove nowhere\n[…]\n$ echo $?\n0\n```\n",
		"no such command":   "```console\n$ chainwale-that-is-not\n```\n",
		"silence":           "```console\n$ chainwale --version\n```\n",
		"a folder not made": "```console\n$ cd nowhere\n```\n",
		"an open block":     "```console\n$ chainwale --version\n",
	} {
		w := newWalk(t)
		if err := w.blocks(text); err == nil {
			t.Errorf("%s went unnoticed", name)
		}
	}
	if err := newWalk(t).blocks("```console\n$ chainwale pack prove nowhere\n[…]\n$ echo $?\n3\n```\n"); err != nil {
		t.Error(err)
	}
}

// walk follows a page in a folder of its own.
type walk struct {
	t            *testing.T
	top, dir     string
	status       int
	unasked      string // the command whose status nobody has looked at yet
	ran, written int
	environment  []string
}

func newWalk(t *testing.T) *walk {
	top := t.TempDir()
	env := append(slices.DeleteFunc(os.Environ(), func(v string) bool { return strings.HasPrefix(v, "GIT_") }),
		"HOME="+top, "XDG_CONFIG_HOME="+top, "GIT_CONFIG_NOSYSTEM=1", "GIT_AUTHOR_NAME=A Surveyor", "GIT_AUTHOR_EMAIL=surveyor@example.org",
		"GIT_COMMITTER_NAME=A Surveyor", "GIT_COMMITTER_EMAIL=surveyor@example.org",
		"GIT_CONFIG_COUNT=1", "GIT_CONFIG_KEY_0=init.defaultBranch", "GIT_CONFIG_VALUE_0=main")
	return &walk{t: t, top: top, dir: top, environment: env}
}

func (w *walk) follow(text string) {
	w.t.Helper()
	if err := w.blocks(text); err != nil {
		w.t.Fatal(err)
	}
}

// blocks goes through the fenced blocks of a page: `console` is what somebody types, and a name
// after the language (`yaml my-limits/a.yaml`) is the file that the block is.
func (w *walk) blocks(text string) error {
	for i, block := range strings.Split("\n"+text, "\n```")[1:] {
		if i%2 == 1 {
			continue // what stands between two blocks
		}
		info, body, _ := strings.Cut(block, "\n")
		if strings.Count("\n"+text, "\n```")%2 != 0 {
			return errors.New("a block is not closed")
		}
		if err := w.block(info, body); err != nil {
			return err
		}
	}
	return w.asked()
}

func (w *walk) block(info, body string) error {
	if info == "console" {
		return w.typed(body)
	}
	if _, name, ok := strings.Cut(info, " "); ok {
		file := filepath.Join(w.top, filepath.FromSlash(name))
		w.written++
		return errors.Join(os.MkdirAll(filepath.Dir(file), 0o755), os.WriteFile(file, []byte(body+"\n"), 0o644))
	}
	return nil
}

// typed runs the commands of a block and compares what each prints.
func (w *walk) typed(body string) error {
	for _, part := range strings.Split("\n"+body, "\n$ ")[1:] {
		command, shown, _ := strings.Cut(part, "\n")
		printed, err := w.command(command)
		if err != nil {
			return err
		}
		if err := matches(command, shown, printed); err != nil {
			return err
		}
	}
	return nil
}

// command runs one command as a shell would. A status other than 0 must be shown next.
func (w *walk) command(line string) (printed string, err error) {
	words := shellWords(line)
	if line == "echo $?" {
		w.unasked = ""
		return fmt.Sprintf("%d\n", w.status), nil
	}
	if err := w.asked(); err != nil {
		return "", err
	}
	w.ran++
	if words[0] == "cd" {
		w.dir = filepath.Join(w.dir, words[1])
		_, err := os.Stat(w.dir)
		return "", err
	}
	c := exec.Command(words[0], words[1:]...)
	c.Dir, c.Env = w.dir, w.environment
	out, err := c.CombinedOutput()
	var ended *exec.ExitError
	if w.status = 0; errors.As(err, &ended) {
		w.status, w.unasked, err = ended.ExitCode(), fmt.Sprintf("%s\nends with status %d:\n%s", line, ended.ExitCode(), out), nil
	}
	return string(out), err
}

// asked is an error if a command failed and the page did not say so.
func (w *walk) asked() error {
	if w.unasked != "" {
		return errors.New(w.unasked)
	}
	return nil
}

// matches compares what a page shows with what was printed, line by line; […] stands
// for any lines.
func matches(command, shown, printed string) error {
	rest, first := strings.TrimRight(printed, "\n"), true
	pieces := strings.Split("\n"+strings.TrimRight(shown, "\n")+"\n", "\n"+elided+"\n")
	for i, piece := range pieces {
		piece = strings.Trim(piece, "\n")
		at := strings.Index("\n"+rest+"\n", "\n"+piece+"\n")
		exact := i == len(pieces)-1 && piece != "" && !strings.HasSuffix("\n"+rest, "\n"+piece)
		if piece == "" && len(pieces) == 1 {
			exact = rest != ""
		}
		if piece != "" && (at < 0 || first && at > 0) || exact {
			return fmt.Errorf("%s\ndoes not print, in this order:\n%s\nit prints:\n%s", command, piece, printed)
		}
		if piece != "" {
			rest = strings.TrimPrefix(rest[min(len(rest), at+len(piece)):], "\n")
		}
		first = false
	}
	return nil
}

// shellWords parts a line into words; quotes keep blanks together.
func shellWords(line string) (words []string) {
	var word strings.Builder
	var quote rune
	begun := false
	for _, r := range line {
		switch {
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '\'' || r == '"'):
			quote, begun = r, true
		case quote == 0 && r == ' ':
			if begun {
				words = append(words, word.String())
			}
			word.Reset()
			begun = false
		default:
			word.WriteRune(r)
			begun = true
		}
	}
	if begun {
		words = append(words, word.String())
	}
	return words
}
