package state

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

// roomVariable is the environment variable that names the room.
const roomVariable = "DRAINBOARD_ROOM"

// Locate says which folder is the room: the one the flag names, else the one
// the environment names, else the current folder if it holds a room.toml, else
// drainboard in the platform's data folder. Whether a room is there, Open says.
func Locate(flag string, getenv func(string) string, cwd string) (string, error) {
	return locate(runtime.GOOS, flag, getenv, cwd)
}

func locate(goos, flag string, getenv func(string) string, cwd string) (string, error) {
	if flag != "" {
		return filepath.Clean(flag), nil
	}
	if dir := getenv(roomVariable); dir != "" {
		return filepath.Clean(dir), nil
	}
	if _, err := os.Stat(filepath.Join(cwd, roomFile)); err == nil {
		return cwd, nil
	}
	data, err := dataFolder(goos, getenv)
	if err != nil {
		return "", err
	}
	return filepath.Join(data, "drainboard"), nil
}

// dataFolder is where a platform keeps the data of programs for one user.
func dataFolder(goos string, getenv func(string) string) (string, error) {
	under := func(variable string, path ...string) (string, error) {
		home := getenv(variable)
		if home == "" {
			return "", fmt.Errorf("no room named and no %s to look in; give --room DIR or set %s", variable, roomVariable)
		}
		return filepath.Join(append([]string{home}, path...)...), nil
	}
	switch goos {
	case "windows":
		if dir := getenv("LOCALAPPDATA"); dir != "" {
			return dir, nil
		}
		return under("USERPROFILE", "AppData", "Local")
	case "darwin", "ios":
		return under("HOME", "Library", "Application Support")
	}
	// The base directory specification has relative paths ignored.
	if dir := getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	return under("HOME", ".local", "share")
}
