package main

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"time"
)

// A program is the desktop program at work, with what it says of itself.
type program struct {
	cmd   *exec.Cmd
	begun time.Time
	log   *os.File

	mu      sync.Mutex
	signs   []sign
	painted []time.Duration
	heap    uint64
	news    chan struct{} // has room for one
}

// A sign is what the window is about to show; see signs.go of the program.
type sign struct {
	at     time.Time
	fields map[string]string
}

func (s sign) number(name string) float64 {
	v, _ := strconv.ParseFloat(s.fields[name], 64)
	return v
}

// built reports whether all is worked out.
func (s sign) built() bool { return s.fields["built"] != "" && s.fields["built"] == s.fields["state"] }

// found reports whether the findings of the plain pattern are shown: webs, islands, flaws.
func (s sign) found() bool { return s.fields["found"] != "" && s.fields["found"] == s.fields["state"] }

// run starts the program on an order, with a state of its own below a folder.
func run(binary, order, folder string) (*program, error) {
	out, in, err := os.Pipe()
	if err != nil {
		return nil, err
	}
	log, err := os.Create(filepath.Join(folder, "log.txt"))
	if err != nil {
		return nil, err
	}
	p := &program{cmd: exec.Command(binary, order), log: log, news: make(chan struct{}, 1)}
	p.cmd.Env = append(os.Environ(), "TSUGIME_SIGNS=/dev/fd/3", "FYNE_SCALE=1", "LANG=en_GB.UTF-8")
	for _, name := range []string{"STATE", "CONFIG", "CACHE"} {
		at := filepath.Join(folder, strings.ToLower(name))
		if err := os.MkdirAll(at, 0o700); err != nil {
			return nil, err
		}
		p.cmd.Env = append(p.cmd.Env, "XDG_"+name+"_HOME="+at)
	}
	p.cmd.Stdout, p.cmd.Stderr, p.cmd.ExtraFiles = log, log, []*os.File{in}
	p.begun = time.Now()
	if err := p.cmd.Start(); err != nil {
		return nil, err
	}
	in.Close()
	go p.listen(bufio.NewScanner(out))
	return p, nil
}

// listen reads the signs.
func (p *program) listen(lines *bufio.Scanner) {
	for lines.Scan() {
		kind, rest, _ := strings.Cut(lines.Text(), " ")
		s := sign{fields: map[string]string{}}
		rest, _, _ = strings.Cut(rest, " path=")
		for field := range strings.FieldsSeq(rest) {
			name, value, _ := strings.Cut(field, "=")
			s.fields[name] = value
		}
		ns, _ := strconv.ParseInt(s.fields["t"], 10, 64)
		s.at = time.Unix(0, ns)
		p.mu.Lock()
		if kind == "shown" {
			p.signs = append(p.signs, s)
		} else {
			p.heap, _ = strconv.ParseUint(s.fields["heap"], 10, 64)
			for ms := range strings.SplitSeq(s.fields["ms"], ",") {
				v, _ := strconv.ParseFloat(ms, 64)
				p.painted = append(p.painted, time.Duration(v*float64(time.Millisecond)))
			}
		}
		p.mu.Unlock()
		select {
		case p.news <- struct{}{}:
		default:
		}
	}
}

// await waits for the first sign at or after a time that is as wanted.
func (p *program) await(t time.Time, patience time.Duration, wanted func(sign) bool) (sign, error) {
	late := time.After(patience)
	for {
		p.mu.Lock()
		for _, s := range p.signs {
			if !s.at.Before(t) && wanted(s) {
				p.mu.Unlock()
				return s, nil
			}
		}
		p.mu.Unlock()
		select {
		case <-p.news:
		case <-late:
			return sign{}, fmt.Errorf("the window did not show what was waited for within %v", patience)
		}
	}
}

// now returns the newest sign.
func (p *program) now() sign {
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(p.signs) == 0 {
		return sign{fields: map[string]string{}}
	}
	return p.signs[len(p.signs)-1]
}

// forget drops the signs noted until now but the newest, and the times of pictures.
func (p *program) forget() {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.signs = append([]sign(nil), p.signs[max(len(p.signs)-1, 0):]...)
	p.painted = nil
}

// times returns how long the pictures since the last forget took to paint.
func (p *program) times() []time.Duration {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]time.Duration(nil), p.painted...)
}

// memory returns what the program holds in megabytes: what is resident, as the
// kernel counts it, and what lives in Go's heap.
func (p *program) memory() (residentMB, heapMB float64, err error) {
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", p.cmd.Process.Pid))
	if err != nil {
		return 0, 0, err
	}
	for line := range strings.Lines(string(status)) {
		if rest, ok := strings.CutPrefix(line, "VmRSS:"); ok {
			kB, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
			if err != nil {
				return 0, 0, err
			}
			residentMB = kB * 1024 / 1e6
		}
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	return residentMB, float64(p.heap) / 1e6, nil
}

// processor returns the processor time that the program has taken.
func (p *program) processor() (time.Duration, error) {
	stat, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", p.cmd.Process.Pid))
	if err != nil {
		return 0, err
	}
	_, rest, _ := strings.Cut(string(stat), ") ")
	f := strings.Fields(rest)
	user, err := strconv.Atoi(f[11])
	if err != nil {
		return 0, err
	}
	system, err := strconv.Atoi(f[12])
	const tick = 10 * time.Millisecond // USER_HZ is 100 on every Linux
	return time.Duration(user+system) * tick, err
}

// end has the program leave and waits for it.
func (p *program) end() error {
	if err := p.cmd.Process.Signal(os.Interrupt); err != nil {
		return err
	}
	err := p.cmd.Wait()
	p.log.Close()
	return err
}
