package state

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestLocate(t *testing.T) {
	room, bare := newRoom(t), t.TempDir()
	cases := map[string]struct {
		goos, flag string
		env        map[string]string
		cwd        string
		want       string
	}{
		"the flag before all":     {"linux", "/a/b/", map[string]string{roomVariable: "/c"}, room, "/a/b"},
		"then the environment":    {"linux", "", map[string]string{roomVariable: "/c", "HOME": "/h"}, room, "/c"},
		"then the current folder": {"linux", "", map[string]string{"HOME": "/h"}, room, room},
		"Linux":                   {"linux", "", map[string]string{"HOME": "/h", "XDG_DATA_HOME": "/d"}, bare, "/d/drainboard"},
		"Linux without XDG":       {"linux", "", map[string]string{"HOME": "/h"}, bare, "/h/.local/share/drainboard"},
		"Linux, XDG not absolute": {"linux", "", map[string]string{"HOME": "/h", "XDG_DATA_HOME": "d"}, bare, "/h/.local/share/drainboard"},
		"BSD as Linux":            {"freebsd", "", map[string]string{"HOME": "/h"}, bare, "/h/.local/share/drainboard"},
		"macOS":                   {"darwin", "", map[string]string{"HOME": "/h", "XDG_DATA_HOME": "/d"}, bare, "/h/Library/Application Support/drainboard"},
		"Windows":                 {"windows", "", map[string]string{"LOCALAPPDATA": "/l", "USERPROFILE": "/u"}, bare, "/l/drainboard"},
		"Windows, bare":           {"windows", "", map[string]string{"USERPROFILE": "/u"}, bare, "/u/AppData/Local/drainboard"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			got, err := locate(c.goos, c.flag, func(k string) string { return c.env[k] }, c.cwd)
			if err != nil || filepath.ToSlash(got) != filepath.ToSlash(c.want) {
				t.Errorf("room = %s, %v; want %s", got, err, c.want)
			}
		})
	}
}

func TestNowhereToLook(t *testing.T) {
	for _, goos := range []string{"linux", "darwin", "windows"} {
		_, err := locate(goos, "", func(string) string { return "" }, t.TempDir())
		if err == nil || !strings.Contains(err.Error(), "give --room DIR or set DRAINBOARD_ROOM") {
			t.Errorf("%s: %v; want what to do", goos, err)
		}
	}
}
