// Package wire is the contract of a design standard as protobuf: the code made from
// contract.proto, the way from engine/standard to it and back, and the two ends of a
// connection.
//
// After a change of contract.proto, with protoc on the machine (Debian package
// protobuf-compiler), make the code anew by
//
//	go generate ./plugins/wire
package wire

//go:generate go run ./generate .
