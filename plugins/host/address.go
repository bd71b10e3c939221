package host

import (
	"fmt"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"runtime"

	"chainwale/engine/standard"
)

// checkAddress refuses to talk to anything but a socket in the program's own
// folder. Where programs have no such sockets, it must be this machine.
func checkAddress(network, address, folder string) error {
	refuse := func(format string, args ...any) error {
		return &standard.Fault{Message: fmt.Sprintf(format, args...), Side: standard.ChangeStandard}
	}
	if runtime.GOOS == "windows" && network == "tcp" {
		host, _, err := net.SplitHostPort(address)
		if ip := net.ParseIP(host); err != nil || ip == nil || !ip.IsLoopback() {
			return refuse("it announces the address %s, which is not of this machine", printable(address))
		}
		return nil
	}
	if network != "unix" || filepath.Dir(filepath.Clean(address)) != folder {
		return refuse("it announces a socket outside the folder that PLUGIN_UNIX_SOCKET_DIR names (%s %s)", printable(network), printable(address))
	}
	info, err := os.Lstat(address)
	if err != nil || info.Mode().Type() != fs.ModeSocket {
		return refuse("it announces a socket that is not there")
	}
	return nil
}
