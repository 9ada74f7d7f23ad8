# make run    open the window on the demo order (or write its sheets where there is no display)
# make test   install what the tests need and run them all
# make install [PREFIX=/usr/local] [DESTDIR=]   both programs, the icon, the entry in the menu, the file type
PREFIX ?= /usr/local
share = $(DESTDIR)$(PREFIX)/share
id = org.tsugime.Tsugime

.PHONY: run test quick bench bench-geometry bench-window pictures install uninstall clean

run:
	@.ci/demo

test:
	@.ci/setup test
	@.ci/test

quick:
	@.ci/test quick

bench:
	CGO_ENABLED=0 go test -run '^$$' -bench . -benchtime 1s ./repeat/... ./export/... ./ui/...

# Unions and offsets beside GEOS on the same input in the same run, and how they grow.
bench-geometry:
	@.ci/setup test
	go test -tags geos -run '^$$' -bench 'BesideThePeer|PeerBuffer|Growth|Union$$|Grown' -benchtime 10x ./repeat/geom

# The window under Xvfb as it is seen from outside: time to ready, shown frames, memory.
bench-window:
	@.ci/bench-window

# The pictures in the README, made by the program.
pictures:
	@.ci/pictures

install:
	@.ci/setup window
	CGO_ENABLED=0 go build -o out/tsugime ./cmd/tsugime
	go build -o out/tsugime-desktop ./cmd/tsugime-desktop
	install -Dm755 -t $(DESTDIR)$(PREFIX)/bin out/tsugime out/tsugime-desktop
	install -Dm644 -t $(share)/applications assets/desktop/$(id).desktop
	install -Dm644 -t $(share)/metainfo assets/desktop/$(id).metainfo.xml
	install -Dm644 -t $(share)/icons/hicolor/scalable/apps assets/desktop/$(id).svg
	install -Dm644 assets/desktop/$(id).mime.xml $(share)/mime/packages/$(id).xml
	@[ -n "$(DESTDIR)" ] || ! command -v update-mime-database >/dev/null || update-mime-database $(share)/mime

uninstall:
	rm -f $(addprefix $(DESTDIR)$(PREFIX)/bin/,tsugime tsugime-desktop) $(share)/applications/$(id).desktop \
	  $(share)/metainfo/$(id).metainfo.xml $(share)/icons/hicolor/scalable/apps/$(id).svg $(share)/mime/packages/$(id).xml
	@[ -n "$(DESTDIR)" ] || ! command -v update-mime-database >/dev/null || update-mime-database $(share)/mime

clean:
	rm -rf out
