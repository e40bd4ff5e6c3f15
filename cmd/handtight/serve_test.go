package main

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/starter"
)

// The page answers to its own loopback name only, is made again from the file at each request,
// says the faults of a build that cannot be taken in place of an old page, and its stamp
// changes when the file is saved.
func TestServePage(t *testing.T) {
	path := filepath.Join(t.TempDir(), "build.toml")
	good, err := starter.Write(starter.Usual())
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, good, 0o644))
	var out, errOut bytes.Buffer
	s := &pageServer{app: &app{ui: newUI(&out, &errOut)}, path: path, host: "127.0.0.1:4321"}
	get := func(method, host, at string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, at, nil)
		r.Host = host
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		return w
	}
	w := get(http.MethodGet, "127.0.0.1:4321", "/")
	require.Equal(t, http.StatusOK, w.Code)
	require.Contains(t, w.Body.String(), "Curlew")
	require.Contains(t, w.Body.String(), `src="/reload.js"`)
	require.Equal(t, http.StatusOK, get(http.MethodGet, "localhost:4321", "/stamp").Code)
	for _, host := range []string{"evil.example", "evil.example:4321", "127.0.0.1", "0.0.0.0:4321", ""} {
		require.Equal(t, http.StatusForbidden, get(http.MethodGet, host, "/").Code, host)
	}
	require.Equal(t, http.StatusMethodNotAllowed, get(http.MethodPost, "127.0.0.1:4321", "/").Code)
	require.Equal(t, http.StatusNotFound, get(http.MethodGet, "127.0.0.1:4321", "/../build.toml").Code)

	before := get(http.MethodGet, "127.0.0.1:4321", "/stamp").Body.String()
	bad := strings.Replace(string(good), `kind     = "seacock"`, `kind     = "<b>seacok</b>"`, 1)
	require.NotEqual(t, string(good), bad)
	require.NoError(t, os.WriteFile(path, []byte(bad), 0o644))
	require.NotEqual(t, before, get(http.MethodGet, "127.0.0.1:4321", "/stamp").Body.String())
	w = get(http.MethodGet, "127.0.0.1:4321", "/")
	require.Equal(t, http.StatusUnprocessableEntity, w.Code)
	require.Contains(t, w.Body.String(), "build.toml line")
	require.NotContains(t, w.Body.String(), "<b>seacok")
}
