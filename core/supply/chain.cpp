#include "core/supply/chain.hpp"

#include <algorithm>
#include <utility>

#include "core/quantity/joined.hpp"
#include "core/quantity/print.hpp"
#include "core/supply/breaker.hpp"
#include "core/supply/limits.hpp"
#include "core/supply/words.hpp"

namespace torchside::supply {
namespace {

Node panel(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    const std::string volts = print(circuit.line).text();
    if (!circuit.generator)
        return {Stop::panel, volts, input.machine.phases == 3 ? "three phases" : "one phase", 0.0, true, circuit.line};
    return {Stop::panel,
            joined({kva(load.source), " of ", kva(*circuit.generator)}),
            joined({"generator, ", volts}),
            load.source / (generator_loading * *circuit.generator),
            true,
            circuit.line};
}

Node breaker(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    return {Stop::breaker,
            joined({amps(load.total), " of ", amps(circuit.breaker)}),
            std::string{breaker_name(circuit.breaker_rule)},
            load.total / circuit.breaker,
            true,
            circuit.line};
}

Node run(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    const Current most = run_ampacity(input);
    const Current carried = run_asked(input, load);
    Node node{Stop::run,
              joined({amps(carried), article_630_applies(input) ? " effective of " : " of ", amps(most)}),
              joined({run_words(circuit), ", ", distance(circuit.run, input.units)}),
              0.0,
              true,
              load.draw.outlet};
    // A section below the table's first row carries an unknown current: taken as just over its limit.
    node.used = most > Current{} ? carried / most : 1.0 + load.total / circuit.breaker;
    if (most <= Current{})
        node.figure = amps(carried);
    return node;
}

// Cord and plug: the one that is closer to its limit.
Node cord(const Input& input, const Load& load) {
    const Circuit& circuit = input.circuit;
    std::optional<Current> most = cord_carries(input);
    std::string detail =
        most ? joined({cord_words(circuit), ", ", distance(circuit.cord, input.units)}) : "no extension cord";
    if (circuit.plug) {
        const PlugRow& plug = row_of(*circuit.plug);
        const Current carries{plug.amps, ampere};
        detail += joined({", ", plug.name});
        most = most ? std::min(*most, carries) : carries;
    }
    if (!most)
        return {Stop::cord, {}, std::move(detail), 0.0, false, load.draw.outlet};
    return {Stop::cord,
            *most > Current{} ? joined({amps(load.draw.current), " of ", amps(*most)}) : amps(load.draw.current),
            std::move(detail),
            *most > Current{} ? load.draw.current / *most : 1.0 + load.total / circuit.breaker,
            true,
            load.draw.machine};
}

Node machine(const Input& input, const Load& load) {
    const Voltage line = input.circuit.line;
    const double lost = (line - load.draw.machine) / line;
    return {Stop::machine,
            print(load.draw.machine).text(),
            joined({print_percent(lost, 1).text(), " lost on the way"}),
            lost / line_tolerance,
            true,
            load.draw.machine};
}

Node torch(const Input& input, const Load& load) {
    const Voltage arc = input.arc.at(input.output);
    return {Stop::torch,
            joined({amps(input.output), " at ", print_fixed(arc.in(volt), 0), " V"}),
            joined({print_percent(load.duty).text(), " duty"}),
            0.0,
            true,
            arc};
}

} // namespace

Chain chain_of(const Input& input, const Load& load) {
    Chain chain;
    chain.nodes = {panel(input, load), breaker(input, load), run(input, load),
                   cord(input, load),  machine(input, load), torch(input, load)};
    for (std::size_t i = 0; i < chain.nodes.size(); ++i)
        if (chain.nodes[i].used > chain.nodes[static_cast<std::size_t>(chain.weakest)].used)
            chain.weakest = static_cast<int>(i);
    return chain;
}

} // namespace torchside::supply
