package finding

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// mostReport is the largest report that is read: a fleet's largest boat has a
// hundredth of it.
const mostReport = 64 << 20

// Read reads a report that a check wrote as JSON. A report of another version, a
// key that no report has, or anything behind the report is an error in plain
// words: a report that is half understood would hide what it says.
func Read(src []byte) (Report, error) {
	if len(src) > mostReport {
		return Report{}, errors.New("the report is larger than 64 MB")
	}
	if err := knownVersion(src); err != nil {
		return Report{}, err
	}
	var r Report
	in := json.NewDecoder(bytes.NewReader(src))
	in.DisallowUnknownFields()
	if err := in.Decode(&r); err != nil {
		return Report{}, fmt.Errorf("this is not a report of chainwale: %w", err)
	}
	if _, err := in.Token(); !errors.Is(err, io.EOF) {
		return Report{}, errors.New("something stands behind the end of the report")
	}
	return r, nil
}

// knownVersion looks at the version alone, so that a newer report is called newer
// and not broken.
func knownVersion(src []byte) error {
	var head struct {
		Version *int `json:"report"`
	}
	in := json.NewDecoder(bytes.NewReader(src))
	switch err := in.Decode(&head); {
	case err != nil:
		return fmt.Errorf("this is not a report of chainwale: %w", err)
	case head.Version == nil:
		return errors.New(`this is not a report of chainwale: it has no key "report"`)
	case *head.Version != ReportVersion:
		return fmt.Errorf("the report is of version %d; this program reads version %d", *head.Version, ReportVersion)
	}
	return nil
}
