module barwright

go 1.25.0

require (
	codeberg.org/go-pdf/fpdf v0.12.0
	github.com/agext/levenshtein v1.2.1
	github.com/go-fonts/liberation v0.3.3
	github.com/google/go-cmp v0.7.0
	github.com/hashicorp/hcl/v2 v2.25.0
	github.com/peterstace/simplefeatures v0.50.0
	github.com/rogpeppe/go-internal v1.16.0
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/spf13/pflag v1.1.0
	github.com/zclconf/go-cty v1.20.0
	golang.org/x/image v0.45.0
	golang.org/x/text v0.41.0
	gonum.org/v1/gonum v0.15.1
	pgregory.net/rapid v1.3.0
)

require (
	github.com/apparentlymart/go-textseg/v15 v15.0.0 // indirect
	github.com/apparentlymart/go-textseg/v17 v17.0.1 // indirect
	github.com/mitchellh/go-wordwrap v1.0.1 // indirect
	golang.org/x/exp v0.0.0-20231110203233-9a3e6036ecaa // indirect
	golang.org/x/mod v0.38.0 // indirect
	golang.org/x/sync v0.22.0 // indirect
	golang.org/x/sys v0.47.0 // indirect
	golang.org/x/tools v0.48.0 // indirect
)
