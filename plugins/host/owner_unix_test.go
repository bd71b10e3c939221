//go:build unix

package host

import (
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"
)

// seen is a file or folder as the system shows it, of a user's.
type seen struct {
	mode fs.FileMode
	user uint32
}

func (s seen) Name() string       { return "seen" }
func (s seen) Size() int64        { return 0 }
func (s seen) Mode() fs.FileMode  { return s.mode }
func (s seen) ModTime() time.Time { return time.Time{} }
func (s seen) IsDir() bool        { return s.mode.IsDir() }
func (s seen) Sys() any           { return &syscall.Stat_t{Uid: s.user} }

// TestWhoMayChange: what another user may change, or put something else in the place of,
// is not trusted.
func TestWhoMayChange(t *testing.T) {
	us := uint32(os.Getuid())
	other := us + 4242
	for _, c := range []struct {
		seen
		file, above string
	}{
		{seen{0o755 | fs.ModeDir, us}, "", ""},
		{seen{0o755 | fs.ModeDir, 0}, "", ""},
		{seen{0o775 | fs.ModeDir, us}, "others may write", "others may write"},
		{seen{0o757 | fs.ModeDir, us}, "others may write", "others may write"},
		{seen{0o755 | fs.ModeDir, other}, "belongs to another user", "belongs to another user"},
		// Where the sticky bit is set, nobody but a file's own user and the folder's may rename it.
		{seen{0o777 | fs.ModeDir | fs.ModeSticky, 0}, "others may write", ""},
		{seen{0o777 | fs.ModeDir | fs.ModeSticky, other}, "others may write", "belongs to another user"},
	} {
		for what, got := range map[string]struct {
			err  error
			want string
		}{"itself": {writableByOthers("seen", c.seen), c.file}, "above": {replaceableByOthers("seen", c.seen), c.above}} {
			if (got.err == nil) != (got.want == "") || got.err != nil && !strings.Contains(got.err.Error(), got.want) {
				t.Errorf("%v of user %d, %s: %v, not %q", c.mode, c.user, what, got.err, got.want)
			}
		}
	}
}
