// bare_haru FOLDER OUTPUT: draws the pages that dump_cards wrote, as plainly as libharu allows.

#include <fstream>
#include <hpdf.h>
#include <sstream>
#include <string>
#include <vector>

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    const std::string folder = argv[1];
    HPDF_Doc document = HPDF_New(nullptr, nullptr);
    HPDF_SetCompressionMode(document, HPDF_COMP_ALL);
    HPDF_UseUTFEncodings(document);
    std::vector<HPDF_Font> fonts(8);
    HPDF_Page page = nullptr;
    std::ifstream in(folder + "/pages.txt");
    bool in_text = false;
    for (std::string text; std::getline(in, text);) {
        std::istringstream line(text);
        std::string kind;
        line >> kind;
        const auto number = [&] {
            float value = 0;
            line >> value;
            return value;
        };
        if (in_text && kind != "text") HPDF_Page_EndText(page), in_text = false;
        if (kind == "page") {
            page = HPDF_AddPage(document);
            HPDF_Page_SetWidth(page, number());
            HPDF_Page_SetHeight(page, number());
        } else if (kind == "line") {
            const float x1 = number(), y1 = number(), x2 = number(), y2 = number();
            HPDF_Page_SetLineWidth(page, number());
            HPDF_Page_SetGrayStroke(page, number());
            HPDF_Page_MoveTo(page, x1, y1);
            HPDF_Page_LineTo(page, x2, y2);
            HPDF_Page_Stroke(page);
        } else if (kind == "box") {
            const float x = number(), y = number(), width = number(), height = number();
            const float line_width = number(), ink = number();
            if (line_width > 0) HPDF_Page_SetLineWidth(page, line_width);
            (line_width > 0 ? HPDF_Page_SetGrayStroke : HPDF_Page_SetGrayFill)(page, ink);
            HPDF_Page_Rectangle(page, x, y, width, height);
            (line_width > 0 ? HPDF_Page_Stroke : HPDF_Page_Fill)(page);
        } else if (kind == "polygon") {
            const float line_width = number(), ink = number();
            if (line_width > 0) HPDF_Page_SetLineWidth(page, line_width);
            (line_width > 0 ? HPDF_Page_SetGrayStroke : HPDF_Page_SetGrayFill)(page, ink);
            const auto count = static_cast<int>(number());
            for (int i = 0; i < count; ++i) {
                const float x = number(), y = number();
                (i == 0 ? HPDF_Page_MoveTo : HPDF_Page_LineTo)(page, x, y);
            }
            HPDF_Page_ClosePath(page);
            (line_width > 0 ? HPDF_Page_Stroke : HPDF_Page_Fill)(page);
        } else {
            if (!in_text) HPDF_Page_BeginText(page), in_text = true;
            const auto face = static_cast<std::size_t>(number());
            const float size = number(), x = number(), y = number(), ink = number();
            line.get();
            std::string words;
            std::getline(line, words);
            if (!fonts[face]) {
                const auto path = folder + "/" + std::to_string(face) + ".ttf";
                const char* name = HPDF_LoadTTFontFromFile(document, path.c_str(), HPDF_TRUE);
                fonts[face] = HPDF_GetFont(document, name, "UTF-8");
            }
            HPDF_Page_SetFontAndSize(page, fonts[face], size);
            HPDF_Page_SetGrayFill(page, ink);
            HPDF_Page_TextOut(page, x, y, words.c_str());
        }
    }
    if (in_text) HPDF_Page_EndText(page);
    const auto status = HPDF_SaveToFile(document, argv[2]);
    HPDF_Free(document);
    return status == HPDF_OK ? 0 : 1;
}
