package ui

import (
	"encoding/json"
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

// dialogWords are the texts of Fyne's own dialogs and menus that this window shows,
// by Fyne's names for them.
var dialogWords = map[string]string{
	"Cancel": "Cancel", "Copy": "Copy", "Create Folder": "Create Folder", "Cut": "Cut",
	"Enter filename": "Enter filename", "Error": "Error", "Favourites": "Favourites", "File": "File",
	"Folder": "Folder", "New Folder": "New Folder", "No": "No", "OK": "OK", "Open": "Open",
	"Paste": "Paste", "Quit": "Quit", "Redo": "Redo", "Save": "Save", "Select all": "Select all",
	"Show Hidden Files": "Show Hidden Files", "Undo": "Undo", "Yes": "Yes",
	"file.name": "Name", "file.parent": "Parent",
}

// sayInDialogs lets Fyne's own dialogs speak as the window does. Fyne has the
// languages of its own choice and takes the system's; so it is kept to English, and
// its English words are put in ours.
func sayInDialogs() {
	said := make(map[string]string, len(dialogWords))
	for name, text := range dialogWords {
		said[name] = say(text)
	}
	words, err := json.Marshal(said)
	if err != nil {
		panic(err) // strings can't fail
	}
	os.Setenv("LANGUAGE", "en")
	if err := lang.AddTranslations(fyne.NewStaticResource("en.json", words)); err != nil {
		fyne.LogError("the words of the dialogs can't be taken over", err)
	}
}
