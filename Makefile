# make run    open the window on the demo order (or write its sheets where there is no display)
# make test   install what the tests need and run them all
.PHONY: run test quick bench bench-geometry pictures clean

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

# The pictures in the README, made by the program.
pictures:
	@.ci/pictures

clean:
	rm -rf out
