// A small strict interpreter of a coupon's program, which knows nothing of how it was written: what a controller would do, and what
// in the text it would not understand.
#pragma once

#include <cmath>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "core/tune/program.hpp"

namespace torchside::test {

struct Run {
    std::vector<std::string> faults{};
    double torch_on_mm = 0.0;                                                   // path with the torch on, in the plane
    double fastest_mm_min = 0.0;                                                // of it
    double lowest_mm = 1e9, left = 1e9, right = -1e9, bottom = 1e9, top = -1e9; // of it
    int pierces = 0;
    double dwell_s = 0.0;
    bool ended = false;
    std::vector<double> feeds{}; // first feed of each leg in the plane
    std::vector<double> heights{};
};

class Interpreter {
public:
    explicit Interpreter(const Controller& words) : words_(words) {}

    Run run(std::string_view text) {
        while (!text.empty()) {
            const std::size_t end = text.find('\n');
            if (end == std::string_view::npos) {
                fault("last line has no end");
            }
            block(std::string(text.substr(0, end)));
            text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
        }
        if (torch_) {
            fault("ends with the torch on");
        }
        if (!run_.ended) {
            fault("no end of program");
        }
        return run_;
    }

private:
    void fault(const std::string& what) { run_.faults.push_back(what); }

    void block(const std::string& line) {
        if (run_.ended) {
            return fault("goes on after its end");
        }
        if (line.front() == '(') {
            if (line.back() != ')' || line.find_first_of("()", 1) != line.size() - 1) {
                fault("bad comment: " + line);
            }
            return;
        }
        if (line == words_.torch_on) {
            if (torch_) {
                fault("torch on twice");
            }
            torch_ = true;
            leg_feed_known_ = false;
            ++run_.pierces;
            return;
        }
        if (line == words_.torch_off) {
            torch_ = false;
            return;
        }
        if (line == words_.height_on || line == words_.height_off) {
            return;
        }
        words(line);
    }

    void words(const std::string& line) {
        double x = x_, y = y_, z = z_, i = 0, j = 0, p = -1;
        int g = -1;
        const char* at = line.c_str();
        while (*at) {
            const char letter = *at++;
            char* after = nullptr;
            const double value = std::strtod(at, &after);
            if (after == at) {
                return fault("no number after a letter: " + line);
            }
            at = after;
            while (*at == ' ') {
                ++at;
            }
            switch (letter) {
            case 'G':
                g = static_cast<int>(value);
                break;
            case 'M':
                if (value != 2) {
                    fault("unknown word: " + line);
                }
                run_.ended = true;
                return;
            case 'X':
                x = value * scale_;
                break;
            case 'Y':
                y = value * scale_;
                break;
            case 'Z':
                z = value * scale_;
                break;
            case 'I':
                i = value * scale_;
                break;
            case 'J':
                j = value * scale_;
                break;
            case 'F':
                feed_ = value * scale_;
                break;
            case 'P':
                p = value;
                break;
            default:
                fault("unknown letter: " + line);
            }
        }
        act(g, x, y, z, i, j, p, line);
    }

    void act(int g, double x, double y, double z, double i, double j, double p, const std::string& line) {
        switch (g) {
        case 17:
        case 90:
        case 94:
            return;
        case 20:
            scale_ = 25.4;
            return;
        case 21:
            scale_ = 1.0;
            return;
        case 4:
            run_.dwell_s += words_.dwell == DwellUnit::millisecond ? p / 1000 : p;
            if (!torch_ || p <= 0) {
                fault("dwell without torch or time: " + line);
            }
            return;
        case 0:
            if (torch_) {
                fault("rapid with the torch on: " + line);
            }
            if (z_ < words_.safe_height.in(mm)-0.01 && (x != x_ || y != y_) && words_.z_words) {
                fault("rapid across below the safe height: " + line);
            }
            break;
        case 1:
        case 2:
        case 3:
            if (!torch_) {
                fault("feed move without the torch: " + line);
            }
            if (!(feed_ > 0)) {
                fault("no feed: " + line);
            }
            cut(g, x, y, z, i, j, line);
            break;
        default:
            fault("unknown: " + line);
        }
        x_ = x;
        y_ = y;
        z_ = z;
    }

    void cut(int g, double x, double y, double z, double i, double j, const std::string& line) {
        double l = std::hypot(x - x_, y - y_);
        if (g != 1) {
            const double radius = std::hypot(i, j);
            if (std::abs(std::hypot(x - x_ - i, y - y_ - j) - radius) > 0.01) {
                fault("arc does not end on its circle: " + line);
            }
            double turn = std::atan2(y - y_ - j, x - x_ - i) - std::atan2(-j, -i);
            turn = g == 2 ? -turn : turn;
            l = radius * (turn <= 1e-6 ? turn + 2 * 3.14159265358979 : turn);
        }
        if (l > 0 && !leg_feed_known_) {
            run_.feeds.push_back(feed_);
            run_.heights.push_back(z);
            leg_feed_known_ = true;
        }
        if (l > 0) {
            run_.fastest_mm_min = std::fmax(run_.fastest_mm_min, feed_);
        }
        run_.torch_on_mm += l;
        run_.lowest_mm = std::fmin(run_.lowest_mm, z);
        run_.left = std::fmin(run_.left, std::fmin(x, x_));
        run_.right = std::fmax(run_.right, std::fmax(x, x_));
        run_.bottom = std::fmin(run_.bottom, std::fmin(y, y_));
        run_.top = std::fmax(run_.top, std::fmax(y, y_));
    }

    const Controller& words_;
    Run run_{};
    bool torch_ = false;
    bool leg_feed_known_ = false;
    double scale_ = 1.0, x_ = 0, y_ = 0, z_ = 0, feed_ = 0;
};

} // namespace torchside::test
