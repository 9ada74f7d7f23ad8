module tsugime

go 1.26
