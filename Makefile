# make run    open the window on the demo order (or write its sheets where there is no display)
# make test   install what the tests need and run them all
.PHONY: run test quick bench pictures clean

run:
	@.ci/demo

test:
	@.ci/setup test
	@.ci/test

quick:
	@.ci/test quick

bench:
	CGO_ENABLED=0 go test -run '^$$' -bench . -benchtime 1s ./repeat/... ./export/... ./ui/...

# The pictures in the README, made by the program.
pictures:
	@.ci/pictures

clean:
	rm -rf out
