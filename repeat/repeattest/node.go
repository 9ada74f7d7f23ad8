package repeattest

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/hex"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

//go:embed readers/package.json
var readers []byte

// Node runs a script on readers from npm and returns what it says. The readers, of
// exact versions, are installed once for all tests into the folder of temporary
// files; the test fails where node or npm is missing or can't install them.
func Node(tb testing.TB, script string, args ...string) string {
	tb.Helper()
	for _, name := range []string{"node", "npm"} {
		if _, err := exec.LookPath(name); err != nil {
			tb.Fatalf("%s is missing, and this check needs it: apt-get install nodejs npm", name)
		}
	}
	cmd := exec.Command("node", append([]string{script}, args...)...)
	cmd.Env = append(os.Environ(), "NODE_PATH="+filepath.Join(installed(tb), "node_modules"))
	var out, problems bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &problems
	if err := cmd.Run(); err != nil {
		tb.Fatalf("node %s %q: %v\n%s%s", script, args, err, out.Bytes(), problems.Bytes())
	}
	return out.String()
}

// installed returns the folder of the readers. Tests of several packages run at the
// same time: each installs beside it, and the first one's folder is taken by all.
func installed(tb testing.TB) string {
	tb.Helper()
	sum := sha256.Sum256(readers)
	folder := filepath.Join(os.TempDir(), "tsugime-readers-"+hex.EncodeToString(sum[:8]))
	if _, err := os.Stat(folder); err == nil {
		return folder
	}
	making, err := os.MkdirTemp("", "tsugime-readers-making-")
	if err != nil {
		tb.Fatal(err)
	}
	defer os.RemoveAll(making)
	if err := os.WriteFile(filepath.Join(making, "package.json"), readers, 0o666); err != nil {
		tb.Fatal(err)
	}
	Tool(tb, "npm", "npm", "install", "--prefix", making, "--no-audit", "--no-fund", "--ignore-scripts", "--silent")
	if err := os.Rename(making, folder); err != nil {
		if _, there := os.Stat(folder); there != nil {
			tb.Fatal(err)
		}
	}
	return folder
}
