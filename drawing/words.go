package drawing

// Words are the words that Finish puts on a sheet. A second language is one
// more value of this type.
type Words struct {
	Owner, Creator, Approved, Issued, Surveyed string
	Revision, Sheet, Paper                     string
	Title, Number, DocumentType                string
	Material, Mass, Scale, Tolerance           string
	Projection, Units, DoNotScale              string
	Gauge, GaugeAsk, Status                    string
}

// English has every word.
var English = Words{
	Owner: "owner", Creator: "drawn by", Approved: "approved by", Issued: "date of issue", Surveyed: "sizes rest on survey of",
	Revision: "revision", Sheet: "sheet", Paper: "paper",
	Title: "title", Number: "drawing number", DocumentType: "kind of document",
	Material: "material and finish", Mass: "mass", Scale: "scale", Tolerance: "general tolerance",
	Projection: "projection", Units: "Dimensions in mm", DoNotScale: "Do not scale. Work to figured sizes.",
	Gauge: "100 mm", GaugeAsk: "measure both bars of the print before use", Status: "status",
}
