//go:build unix

package host

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// writableByOthers tells that other users could change a file or folder between our
// look at it and its start.
func writableByOthers(name string, info fs.FileInfo) error {
	if info.Mode().Perm()&0o002 != 0 {
		return untrusted("everybody may write to %s (take that away: chmod o-w)", name)
	}
	if s, ok := info.Sys().(*syscall.Stat_t); ok && s.Uid != 0 && int(s.Uid) != os.Getuid() {
		return untrusted("%s belongs to another user, who may change it at any time", name)
	}
	return nil
}

// onlyOurs tells that other users could put another folder in this one's place: a
// folder above it lets everybody rename what it holds.
func onlyOurs(folder string) error {
	for dir := filepath.Dir(folder); ; dir = filepath.Dir(dir) {
		info, err := os.Stat(dir)
		if err != nil {
			return untrusted("the folder %s can't be looked at", dir)
		}
		if info.Mode().Perm()&0o002 != 0 && info.Mode()&fs.ModeSticky == 0 {
			return untrusted("everybody may write to %s, above the program (take that away: chmod o-w)", dir)
		}
		if dir == filepath.Dir(dir) {
			return nil
		}
	}
}
