package host

import (
	"bytes"
	"io"
	"os"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// mostKept is how many bytes of what a program prints are kept: the first and the
// last so many. A flood costs no memory.
const mostKept = 4096

// output keeps the beginning and the end of what a program prints.
type output struct {
	mu         sync.Mutex
	head, tail []byte
}

// Write keeps what there is room for, and takes all.
func (o *output) Write(b []byte) (int, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	rest := b
	if room := mostKept - len(o.head); room > 0 {
		n := min(room, len(rest))
		o.head = append(o.head, rest[:n]...)
		rest = rest[n:]
	}
	if len(rest) > mostKept {
		rest = rest[len(rest)-mostKept:]
	}
	o.tail = append(o.tail, rest...)
	if over := len(o.tail) - mostKept; over > 0 {
		o.tail = o.tail[:copy(o.tail, o.tail[over:])]
	}
	return len(b), nil
}

// telling is the line that says most: how a Go program broke down, or else the last,
// which is where other languages put it.
func (o *output) telling() string {
	o.mu.Lock()
	defer o.mu.Unlock()
	last := ""
	for _, line := range strings.Split(string(o.head)+string(o.tail), "\n") {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "panic: ") || strings.HasPrefix(line, "fatal error: ") {
			return printable(line)
		}
		if line != "" {
			last = line
		}
	}
	return printable(last)
}

// longestQuoted is how many characters of a program's words a message repeats.
const longestQuoted = 200

// printable is a foreign text on one line, no longer than a message should repeat it.
func printable(text string) string {
	text = onOneLine(text)
	if r := []rune(text); len(r) > longestQuoted {
		return string(r[:longestQuoted]) + "…"
	}
	return text
}

// onOneLine is a foreign text without what moves a cursor.
func onOneLine(text string) string {
	text = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsGraphic(r) || r == utf8.RuneError:
			return '?'
		}
		return r
	}, text)
	return strings.Join(strings.Fields(text), " ")
}

// firstLine passes on what a program prints and keeps its first line, with which it
// announces itself.
type firstLine struct {
	from *os.File
	mu   sync.Mutex
	line []byte
	full bool
}

func (f *firstLine) Read(b []byte) (int, error) {
	n, err := f.from.Read(b)
	f.mu.Lock()
	defer f.mu.Unlock()
	if !f.full {
		f.line = append(f.line, b[:n]...)
		if end := bytes.IndexByte(f.line, '\n'); end >= 0 {
			f.line, f.full = f.line[:end], true
		}
		f.full = f.full || len(f.line) > mostKept
	}
	return n, err
}

// Close ends the reading.
func (f *firstLine) Close() error { return f.from.Close() }

// fields are the parts of the announcement.
func (f *firstLine) fields() []string {
	f.mu.Lock()
	defer f.mu.Unlock()
	return strings.Split(strings.TrimSpace(string(f.line)), "|")
}

// field is one part of the announcement, "" if it is not there.
func (f *firstLine) field(i int) string {
	if fields := f.fields(); i < len(fields) {
		return fields[i]
	}
	return ""
}

// untilEnd passes on what a program prints, and tells when no more will come.
type untilEnd struct {
	from  *os.File
	once  sync.Once
	ended chan struct{}
}

func (u *untilEnd) Read(b []byte) (int, error) {
	n, err := u.from.Read(b)
	if err != nil {
		u.once.Do(func() { close(u.ended) })
	}
	return n, err
}

// Close ends the reading.
func (u *untilEnd) Close() error { return u.from.Close() }

var _ io.ReadCloser = (*untilEnd)(nil)
