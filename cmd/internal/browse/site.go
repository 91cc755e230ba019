package browse

import (
	"net"
	"net/http"
	"os"
	"path"
	"slices"
	"strings"
	"sync"
)

// Path is where a site stands on its server: any path must do.
const Path = "/field-school/week 2/"

// Site is a folder of files, served on this machine.
type Site struct {
	dir    string
	server *http.Server
	host   string

	mu     sync.Mutex
	broken map[string]int
	closed bool
	asked  []string
}

// Serve serves a folder until Close.
func Serve(dir string) (*Site, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	s := &Site{dir: dir, host: l.Addr().String(), broken: map[string]int{}}
	s.server = &http.Server{Handler: s}
	go s.server.Serve(l)
	return s, nil
}

// Close ends the server.
func (s *Site) Close() error { return s.server.Close() }

// URL is the address of the page, with a fragment behind it if there is one.
func (s *Site) URL(fragment string) string {
	u := "http://" + s.host + strings.ReplaceAll(Path, " ", "%20")
	if fragment != "" {
		u += "#" + fragment
	}
	return u
}

// Break makes the server answer every request whose file ends as given with a
// status; 0 makes it whole again.
func (s *Site) Break(ending string, status int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.broken[ending] = status
}

// Offline makes the server hang up on whoever asks, or answer again.
func (s *Site) Offline(on bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = on
}

// Asked are the paths that have been asked for, in order.
func (s *Site) Asked() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.asked)
}

// ServeHTTP answers with the files of the folder, under Path only. A plain
// static server: no header but the type of the file.
func (s *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	status, closed := s.note(r.URL.Path)
	if closed {
		hangUp(w)
		return
	}
	name, under := strings.CutPrefix(r.URL.Path, Path)
	if !under || status != 0 {
		http.Error(w, "not here", max(status, http.StatusNotFound))
		return
	}
	if name == "" {
		name = "index.html"
	}
	data, err := os.ReadFile(path.Join(s.dir, path.Clean("/"+name)))
	if err != nil {
		http.NotFound(w, r)
		return
	}
	w.Header().Set("Content-Type", kind(name))
	w.Write(data)
}

func (s *Site) note(p string) (status int, closed bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.asked = append(s.asked, p)
	for ending, n := range s.broken {
		if strings.HasSuffix(p, ending) {
			status = n
		}
	}
	return status, s.closed
}

func hangUp(w http.ResponseWriter) {
	if c, _, err := http.NewResponseController(w).Hijack(); err == nil {
		c.Close()
	}
}

// kind is the media type of a file by its ending, as common servers have it.
func kind(name string) string {
	switch path.Ext(name) {
	case ".html":
		return "text/html; charset=utf-8"
	case ".js", ".mjs":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".json", ".webmanifest":
		return "application/json"
	case ".wasm":
		return "application/wasm"
	case ".svg":
		return "image/svg+xml"
	case ".png":
		return "image/png"
	case ".ttf":
		return "font/ttf"
	case ".woff2":
		return "font/woff2"
	}
	return "application/octet-stream"
}
