// Reads cutting files and prints what is drawn, a thing a line.
#include <cstdio>
#include <string>

#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

struct Printer : DL_CreationAdapter {
	std::string contour;

	std::string layer() { return attributes.getLayer(); }
	void flush() {
		if (!contour.empty()) printf("%s\n", contour.c_str());
		contour.clear();
	}
	void addPolyline(const DL_PolylineData &d) override {
		flush();
		contour = "contour " + layer() + " " + std::to_string(d.flags & 1) + " ";
	}
	void addVertex(const DL_VertexData &d) override {
		char corner[120];
		snprintf(corner, sizeof corner, "; %.9f %.9f %.9f", d.x, d.y, d.bulge);
		contour += corner;
	}
	void addCircle(const DL_CircleData &d) override {
		flush();
		printf("circle %s %.9f %.9f %.9f\n", layer().c_str(), d.cx, d.cy, d.radius);
	}
	void addLine(const DL_LineData &d) override {
		flush();
		printf("line %s %.9f %.9f %.9f %.9f\n", layer().c_str(), d.x1, d.y1, d.x2, d.y2);
	}
	void addText(const DL_TextData &d) override {
		flush();
		printf("text %s %.9f %.9f %.9f\n", layer().c_str(), d.ipx, d.ipy, d.height);
	}
};

int main(int n, char **names) {
	for (int i = 1; i < n; i++) {
		Printer p;
		DL_Dxf reader;
		if (!reader.in(names[i], &p)) return 1;
		p.flush();
		printf("end\n");
	}
}
