package cloth

import (
	"testing"
)

func TestEveryFormIsRead(t *testing.T) {
	for _, kind := range GarmentKinds() {
		f, err := FormOf(kind)
		if err != nil {
			t.Errorf("%s: %v", kind, err)
			continue
		}
		if f.Name != kind {
			t.Errorf("the form %s calls itself %s", kind, f.Name)
		}
	}
}
