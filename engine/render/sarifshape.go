package render

import "chainwale/engine/finding"

// The part of SARIF 2.1.0 (OASIS Standard, errata 01) that a check fills in. Keys
// and their sense are the standard's; what is ours stands in the property bags.

type sarifLog struct {
	Schema  string     `json:"$schema"`
	Version string     `json:"version"`
	Runs    []sarifRun `json:"runs"`
}

type sarifRun struct {
	Tool        sarifTool         `json:"tool"`
	Invocations []sarifInvocation `json:"invocations"`
	Language    string            `json:"language"`
	ColumnKind  string            `json:"columnKind"`
	Results     []sarifResult     `json:"results"`
	Properties  sarifRunBag       `json:"properties"`
}

type sarifTool struct {
	Driver sarifDriver `json:"driver"`
}

type sarifDriver struct {
	Name            string      `json:"name"`
	Version         string      `json:"version,omitempty"`
	FullDescription *sarifText  `json:"fullDescription,omitempty"`
	Rules           []sarifRule `json:"rules"`
}

type sarifRule struct {
	ID                   string             `json:"id"`
	ShortDescription     *sarifText         `json:"shortDescription,omitempty"`
	FullDescription      *sarifText         `json:"fullDescription,omitempty"`
	Help                 *sarifText         `json:"help,omitempty"`
	DefaultConfiguration sarifConfiguration `json:"defaultConfiguration"`
	Properties           sarifRuleBag       `json:"properties"`
}

type sarifConfiguration struct {
	Level string `json:"level"`
}

type sarifText struct {
	Text string `json:"text"`
}

type sarifInvocation struct {
	ExecutionSuccessful bool                `json:"executionSuccessful"`
	ExitCode            int                 `json:"exitCode"`
	Notifications       []sarifNotification `json:"toolExecutionNotifications,omitempty"`
}

type sarifNotification struct {
	Level     string          `json:"level"`
	Message   sarifText       `json:"message"`
	Locations []sarifLocation `json:"locations,omitempty"`
}

type sarifResult struct {
	RuleID              string             `json:"ruleId"`
	RuleIndex           int                `json:"ruleIndex"`
	Kind                string             `json:"kind"`
	Level               string             `json:"level"`
	Message             sarifText          `json:"message"`
	Locations           []sarifLocation    `json:"locations,omitempty"`
	RelatedLocations    []sarifLocation    `json:"relatedLocations,omitempty"`
	PartialFingerprints map[string]string  `json:"partialFingerprints"`
	BaselineState       string             `json:"baselineState,omitempty"`
	Suppressions        []sarifSuppression `json:"suppressions,omitempty"`
	Properties          sarifResultBag     `json:"properties"`
}

type sarifLocation struct {
	ID               int             `json:"id,omitempty"`
	PhysicalLocation *sarifPhysical  `json:"physicalLocation,omitempty"`
	LogicalLocations []sarifLogical  `json:"logicalLocations,omitempty"`
	Message          *sarifText      `json:"message,omitempty"`
	Properties       *sarifPlacedBag `json:"properties,omitempty"`
}

type sarifPhysical struct {
	ArtifactLocation sarifArtifact `json:"artifactLocation"`
	Region           *sarifRegion  `json:"region,omitempty"`
}

type sarifArtifact struct {
	URI string `json:"uri"`
}

type sarifRegion struct {
	StartLine   int `json:"startLine"`
	StartColumn int `json:"startColumn,omitempty"`
}

type sarifLogical struct {
	FullyQualifiedName string `json:"fullyQualifiedName"`
}

type sarifSuppression struct {
	Kind          string `json:"kind"`
	Status        string `json:"status"`
	Justification string `json:"justification"`
}

// The property bags: what SARIF has no key for, under the names of our own report.

type sarifRunBag struct {
	On        string                 `json:"on"`
	Boat      string                 `json:"boat"`
	Plan      finding.PlanRead       `json:"plan"`
	RefuseAt  finding.Grade          `json:"refuse_from"`
	Counts    finding.Counts         `json:"counts"`
	Packs     []finding.PackUsed     `json:"packs"`
	Standards []finding.StandardUsed `json:"standards"`
	NotSeen   []string               `json:"not_seen"`
	Cautions  []string               `json:"cautions"`
}

type sarifRuleBag struct {
	Pack    string        `json:"pack"`
	Grade   finding.Grade `json:"grade"`
	Decides []string      `json:"decides"`
}

type sarifResultBag struct {
	Outcome finding.Outcome `json:"outcome"`
	Grade   finding.Grade   `json:"grade"`
	HoldsUp string          `json:"holds_up,omitempty"`
	Subject string          `json:"subject"`
	Have    *finding.Amount `json:"have,omitempty"`
	Need    *finding.Amount `json:"need,omitempty"`
	Ratio   *float64        `json:"ratio,omitempty"`
	Unknown []string        `json:"unknown,omitempty"`
}

type sarifPlacedBag struct {
	Pointer string `json:"pointer"`
}
