package host

import (
	"fmt"
	"os"
	"runtime"

	"github.com/hashicorp/go-plugin"
)

// environment is all that a program is told of where it runs, so that it does the
// same for everybody: nothing of the user's own gets through.
func (p *process) environment() []string {
	dir := p.runsIn()
	env := []string{
		plugin.EnvUnixSocketDir + "=" + p.folder,
		"HOME=" + dir, "TMPDIR=" + dir,
		"LANG=C.UTF-8", "LC_ALL=C.UTF-8", "TZ=UTC",
		fmt.Sprintf("GOMEMLIMIT=%d", p.limits.Memory),
		// Else Python writes files beside the program, which is pinned, and walks
		// through its sets in another order each time.
		"PYTHONDONTWRITEBYTECODE=1", "PYTHONHASHSEED=0", "PYTHONNOUSERSITE=1",
	}
	if runtime.GOOS == "windows" {
		root := os.Getenv("SystemRoot")
		return append(env, "SystemRoot="+root, "PATH="+root+`\System32`, "TEMP="+dir, "TMP="+dir)
	}
	return append(env, "PATH=/usr/local/bin:/usr/bin:/bin")
}
