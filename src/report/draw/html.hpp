// Pages without script or network: one file, printed by any browser. Everything a user typed goes through html_text.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gentlest {

/// Paper that a page is printed on.
enum class Paper { A4, letter };

struct PaperSize {
  double width_mm = 210;
  double height_mm = 297;
  const char* css = "A4";
};
PaperSize size_of(Paper paper);
std::optional<Paper> paper_from_word(std::string_view word);  ///< "a4", "letter"; case does not matter

/// Escaped text.
std::string html_text(std::string_view text);
/// The same, its writing direction kept apart from what stands around it.
std::string user_text(std::string_view text);

/// What is read of HTML of ours, without its tags.
std::string html_words(const std::string& html);

/// <name class="...">inner</name>; `inner` is HTML.
std::string element(const char* name, const std::string& inner, const char* css_class = "");

/// <ul> of HTML items; empty text when there are none.
std::string html_list(const std::vector<std::string>& items);

/// The head of one column, HTML, of the class c0, c1 ...
std::string column_head(std::size_t column, const std::string& words);

/// A table with a header row; cells are HTML; the first column is the row's header. The heads of the
/// columns carry the classes c0, c1 ...
std::string html_table(const std::vector<std::string>& header, const std::vector<std::vector<std::string>>& rows,
                       const char* css_class = "");

/// What stands at the top of a printed page: which painting (plain text, cut to fit), which part and page of it (HTML),
/// and a day: as given, or a line to write it on.
std::string page_head(std::string_view title, const std::string& part, std::string_view day);

/// Pages printed one after the other, `head` at the top of each and `foot` below what stands there: head and foot of a
/// table, which is what every browser repeats. `css_class` is that of the section.
std::string running_pages(const std::string& head, const std::string& body, const char* css_class = "",
                          const std::string& foot = {});

/// One printed page by itself; what does not fit goes on to another without a head.
std::string single_page(const std::string& head, const std::string& body, const char* css_class = "");

/// Height of what the browser sets on a page of text, mm; see text_page_css.
double text_page_height_mm(Paper paper);

/// Style of a page of text: margins, the page's number where the browser can count (pages of one head count
/// themselves), and `foot` in the lower left corner.
std::string text_page_css(const std::string& foot);

/// A whole document in English. `css` follows the shared style; `title` and `body`: plain text and HTML.
std::string html_page(std::string_view title, Paper paper, const std::string& css, const std::string& body);

}  // namespace gentlest
