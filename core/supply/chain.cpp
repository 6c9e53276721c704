#include "core/supply/chain.hpp"

#include <algorithm>
#include <utility>

#include "core/supply/breaker.hpp"
#include "core/supply/limits.hpp"
#include "core/supply/words.hpp"
#include "generated/words/circuit_more.hpp"

namespace torchside::supply {
namespace {

using namespace words::circuit_more;

Text of(ApparentPower load, ApparentPower most) {
    return Of{.load = load, .most = most};
}

Text of(Current load, Current most) {
    return Of{.load = load, .most = most};
}

Node panel(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    if (!circuit.generator) {
        return {
            Stop::panel, Figure{.load = circuit.line}, input.machine.phases == 3 ? three_phases : one_phase, 0.0, true,
            circuit.line};
    }
    return {Stop::panel,
            of(load.source, *circuit.generator),
            Generator{.volts = circuit.line},
            load.source / (generator_loading * *circuit.generator),
            true,
            circuit.line};
}

Node breaker(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    return {Stop::breaker,
            of(load.total, circuit.breaker),
            words::verbatim(breaker_name(circuit.breaker_rule)),
            load.total / circuit.breaker,
            true,
            circuit.line};
}

Node run(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    const Current most = run_ampacity(input);
    const Current carried = run_asked(input, load);
    Node node{.stop = Stop::run,
              .detail = Run{.length = words::distance(circuit.run), .wire = run_words(circuit)},
              .voltage = load.draw.outlet};
    // A section below the table's first row carries an unknown current: taken as just over its limit.
    node.used = most > Current{} ? carried / most : 1.0 + load.total / circuit.breaker;
    if (most <= Current{}) {
        node.figure = Figure{.load = carried};
    } else if (article_630_applies(input)) {
        node.figure = EffectiveOf{.load = carried, .most = most};
    } else {
        node.figure = of(carried, most);
    }
    return node;
}

// Cord and plug: the one that is closer to its limit.
Node cord(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    std::optional<Current> most = cord_carries(input);
    Text detail = no_cord;
    if (most) {
        detail = Run{.length = words::distance(circuit.cord), .wire = cord_words(circuit)};
    }
    if (circuit.plug) {
        const PlugRow& plug = row_of(*circuit.plug);
        const Current carries{plug.amps, ampere};
        detail = CordPlug{.cord = detail, .plug = plug.name};
        most = most ? std::min(*most, carries) : carries;
    }
    if (!most) {
        return {Stop::cord, {}, std::move(detail), 0.0, false, load.draw.outlet};
    }
    const bool listed = *most > Current{};
    return {Stop::cord,
            listed ? of(load.draw.current, *most) : Text{Figure{.load = load.draw.current}},
            std::move(detail),
            listed ? load.draw.current / *most : 1.0 + load.total / circuit.breaker,
            true,
            load.draw.machine};
}

Node machine(const Input& input, const Load& load) {
    const Voltage line = input.circuit.line;
    const double lost = (line - load.draw.machine) / line;
    return {Stop::machine,
            Figure{.load = load.draw.machine},
            Lost{.share = words::percent(lost, 1)},
            lost / line_tolerance,
            true,
            load.draw.machine};
}

Node torch(const Input& input, const Load& load) {
    const Voltage arc = input.arc.at(input.output);
    return {Stop::torch,
            Torch{.current = input.output, .volts = words::fixed(arc.in(volt), 0)},
            DutyShare{.share = words::percent(load.duty)},
            0.0,
            true,
            arc};
}

} // namespace

Chain chain_of(const Input& input, const Load& load) {
    Chain chain;
    chain.nodes = {panel(input, load), breaker(input, load), run(input, load),
                   cord(input, load),  machine(input, load), torch(input, load)};
    for (std::size_t i = 0; i < chain.nodes.size(); ++i) {
        if (chain.nodes[i].used > chain.nodes[static_cast<std::size_t>(chain.weakest)].used) {
            chain.weakest = static_cast<int>(i);
        }
    }
    return chain;
}

} // namespace torchside::supply
