package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"html/template"
	"net"
	"net/http"
	"os"
	"os/signal"
	"time"

	"handtight/bom/page"
)

// reloadScript asks twice a second whether the build was saved, and shows the page again.
const reloadScript = `"use strict";
let stamp = "";
setInterval(async () => {
  try {
    const now = await (await fetch("/stamp", {cache: "no-store"})).text();
    if (stamp && now !== stamp) location.reload();
    stamp = now;
  } catch (e) { /* the program has ended */ }
}, 500);
`

var faultPage = template.Must(template.New("fault").Parse(`<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>The build cannot be taken</title><script src="/reload.js" defer></script></head><body><main><h1>The build cannot be taken</h1><p>Nothing is shown of it until that is mended.</p><pre>{{.}}</pre></main></body></html>`))

// servePage shows the page on the loopback address only, made again from the files at each
// request, until it is interrupted.
func (a *app) servePage(ctx context.Context, path string, only []string, port int) error {
	l, err := net.Listen("tcp", net.JoinHostPort("127.0.0.1", fmt.Sprint(port)))
	if err != nil {
		return fmt.Errorf("port %d cannot be opened on this machine: choose another with --port", port)
	}
	if ctx == nil {
		ctx = context.Background()
	}
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt)
	defer stop()
	s := &pageServer{app: a, path: path, only: only, host: l.Addr().String()}
	server := &http.Server{Handler: s, ReadHeaderTimeout: 5 * time.Second}
	go func() {
		<-ctx.Done()
		_ = server.Close()
	}()
	a.ui.line("Open http://%s in a browser on this machine; end with Ctrl-C.", s.host)
	if err := server.Serve(l); !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

// pageServer answers for one build. It refuses every host but its own loopback address, so
// that no page elsewhere can read the build through a name that leads here.
type pageServer struct {
	app  *app
	path string
	only []string
	host string
	seen []string // the files of the last good reading
}

func (s *pageServer) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	_, port, _ := net.SplitHostPort(s.host)
	if r.Host != s.host && r.Host != net.JoinHostPort("localhost", port) {
		http.Error(w, "this page answers on this machine only", http.StatusForbidden)
		return
	}
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		http.Error(w, "it can only be read", http.StatusMethodNotAllowed)
		return
	}
	w.Header().Set("X-Content-Type-Options", "nosniff")
	w.Header().Set("Cache-Control", "no-store")
	w.Header().Set("Referrer-Policy", "no-referrer")
	switch r.URL.Path {
	case "/":
		s.page(w)
	case "/stamp":
		_, _ = w.Write([]byte(s.stamp()))
	case "/reload.js":
		w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
		_, _ = w.Write([]byte(reloadScript))
	default:
		http.NotFound(w, r)
	}
}

func (s *pageServer) page(w http.ResponseWriter) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	var b bytes.Buffer
	reader := &app{ui: s.app.ui, outside: s.app.outside}
	p, files, err := reader.makePage(s.path, s.only)
	if err == nil {
		s.seen = files
		p.Live = true
		err = page.Write(&b, p)
	}
	if err != nil {
		b.Reset()
		w.WriteHeader(http.StatusUnprocessableEntity)
		if err := faultPage.Execute(&b, err.Error()); err != nil {
			return
		}
	}
	_, _ = w.Write(b.Bytes())
}

// stamp changes when a file of the build does.
func (s *pageServer) stamp() string {
	files := s.seen
	if len(files) == 0 {
		files = []string{s.path}
	}
	out := ""
	for _, name := range files {
		if info, err := os.Stat(name); err == nil {
			out += fmt.Sprintf("%d-%d ", info.ModTime().UnixNano(), info.Size())
		} else {
			out += "gone "
		}
	}
	return out
}
