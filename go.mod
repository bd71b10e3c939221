module chainwale

go 1.26

require (
	github.com/alecthomas/kong v1.17.0
	github.com/expr-lang/expr v1.17.8
	github.com/rogpeppe/go-internal v1.16.0
	github.com/santhosh-tekuri/jsonschema/v5 v5.3.1
	go.yaml.in/yaml/v4 v4.0.0
	pgregory.net/rapid v1.3.0
)

require (
	golang.org/x/sys v0.26.0 // indirect
	golang.org/x/tools v0.26.0 // indirect
)
