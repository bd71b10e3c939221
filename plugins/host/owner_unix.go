//go:build unix

package host

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// othersWrite are the bits of a mode that let a group or everybody write. Whether a
// group has nobody else in it can't be told, so no group may.
const othersWrite fs.FileMode = 0o022

// writableByOthers tells that other users could change a file or folder between our
// look at it and its start.
func writableByOthers(name string, info fs.FileInfo) error {
	if info.Mode().Perm()&othersWrite != 0 {
		return untrusted("others may write to %s (take that away: chmod go-w)", name)
	}
	return ofAnother(name, info)
}

// onlyOurs tells that other users could put another folder in this one's place: a
// folder above it is theirs, or lets them rename what it holds.
func onlyOurs(folder string) error {
	for dir := filepath.Dir(folder); ; dir = filepath.Dir(dir) {
		info, err := os.Stat(dir)
		if err != nil {
			return untrusted("the folder %s can't be looked at", dir)
		}
		if err := replaceableByOthers(dir, info); err != nil {
			return err
		}
		if dir == filepath.Dir(dir) {
			return nil
		}
	}
}

// replaceableByOthers tells that other users could rename what a folder holds. Where
// its sticky bit is set, who may write to it can't rename what is not theirs.
func replaceableByOthers(dir string, info fs.FileInfo) error {
	if info.Mode().Perm()&othersWrite != 0 && info.Mode()&fs.ModeSticky == 0 {
		return untrusted("others may write to %s, above the program (take that away: chmod go-w)", dir)
	}
	return ofAnother(dir, info)
}

// ofAnother tells that something belongs to neither us nor the system's own user.
func ofAnother(name string, info fs.FileInfo) error {
	if s, ok := info.Sys().(*syscall.Stat_t); ok && s.Uid != 0 && int(s.Uid) != os.Getuid() {
		return untrusted("%s belongs to another user, who may change it at any time", name)
	}
	return nil
}
