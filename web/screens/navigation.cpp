#include "web/screens/navigation.hpp"

namespace torchside::web {
namespace {

constexpr float two_columns = 700;
constexpr float three_columns = 1100;

} // namespace

void Navigation::go(Page page) {
    page_ = page;
    panel_.clear();
}

bool Navigation::back() {
    if (!panel_.empty()) {
        panel_.clear();
        return false;
    }
    page_ = Page::cut;
    return true;
}

void Navigation::fit(float width) {
    columns_ = width >= three_columns ? 3 : width >= two_columns ? 2 : 1;
}

std::string Navigation::address() const {
    std::string out(row_of(page_).address);
    if (!panel_.empty()) {
        out += '/';
        out += panel_;
    }
    return out;
}

void Navigation::follow(std::string_view fragment) {
    go(Page::cut);
    for (const PageRow& row : pages()) {
        if (fragment.starts_with(row.address)) {
            page_ = row.page;
            const std::string_view rest = fragment.substr(row.address.size());
            panel_ = rest.size() > 1 && rest[0] == '/' ? rest.substr(1) : std::string_view();
        }
    }
}

} // namespace torchside::web
