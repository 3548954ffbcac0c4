using System.CommandLine;
using System.Globalization;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Units;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Planning;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Commands;

/// <summary>The options of <c>protocol plan</c>, and the request they make.</summary>
internal sealed class PlanOptions
{
    private readonly Option<string?> _outcome = new("--outcome") { Description = "Variable to plan for (default: the first primary outcome).", HelpName = "NAME" };
    private readonly Option<double?> _change = new("--change") { Description = "True change to be found (default: the smallest worthwhile one).", HelpName = "X" };
    private readonly Option<double?> _session = new("--session-sd") { Description = "Scatter from session to session, in place of what is known.", HelpName = "X" };
    private readonly Option<double?> _swing = new("--swing-sd") { Description = "Scatter from swing to swing within a session, in place of what is known.", HelpName = "X" };
    private readonly Option<double> _between = new("--change-sd") { Description = "Scatter of the true change over players.", HelpName = "X" };
    private readonly Option<string?> _unit = new("--unit") { Description = "Unit of these numbers, a UCUM code or customary name (default: the variable's canonical unit).", HelpName = "UNIT" };
    private readonly Option<string> _sessions = Numbers("--sessions", "Sessions of each phase to try.", "2,3,5,8,12");
    private readonly Option<string> _swings = Numbers("--swings", "Swings of each session to try.", "5,10,20");
    private readonly Option<int?> _players = new("--players") { Description = "Players (default: as the protocol plans).", HelpName = "N" };
    private readonly Option<double> _power = new("--power") { Description = "Power wanted, a share.", HelpName = "SHARE", DefaultValueFactory = _ => 0.8 };
    private readonly Option<int> _replications = new("--replications") { Description = "Simulated studies for each size.", HelpName = "N", DefaultValueFactory = _ => 1000 };

    /// <summary>Where to write the figure.</summary>
    public Option<string?> Figure { get; } = new("--figure") { Description = "Write a figure: .png or .svg.", HelpName = "FILE" };

    /// <summary>Adds the options to the command.</summary>
    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _outcome, _change, _session, _swing, _between, _unit, _sessions, _swings, _players, _power, _replications, Figure })
            command.Add(option);
    }

    /// <summary>The outcome that is meant; null when the protocol has none of that name.</summary>
    public OutcomeMeasure? OutcomeOf(ParseResult parsed, Protocol protocol) =>
        parsed.GetValue(_outcome) is { } name ? protocol.Outcomes.FirstOrDefault(outcome => outcome.Variable == name) : protocol.Outcomes[0];

    /// <summary>What shall be planned, or what is missing for it.</summary>
    public Outcome<PlanRequest> Request(ParseResult parsed, Protocol protocol, VariableDictionary dictionary, TableStore? tables)
    {
        if (protocol.Design is DesignKind.Reliability or DesignKind.Agreement)
            return new Problem("plan-design", new Place(protocol.File), "the design compares no phases", "a design with baseline and intervention", "'swingstudy calc icc-plan' plans a reliability study.");
        if (OutcomeOf(parsed, protocol) is not { } outcome)
        {
            return new Problem("outcome-unknown", new Place("--outcome"), $"'{parsed.GetValue(_outcome)}' is no outcome of the protocol", "one of " + string.Join(", ", protocol.Outcomes.Select(known => known.Variable)),
                "Name an outcome of the protocol.");
        }

        if (!Factor(parsed, dictionary[outcome.Variable]).Succeeded(out var factor, out var problems)
            || !NoiseOf(parsed, outcome, factor, tables).Succeeded(out var noise, out problems)
            || !Counts(parsed, _sessions, 100).Succeeded(out var sessions, out problems)
            || !Counts(parsed, _swings, 1000).Succeeded(out var swings, out problems))
            return Outcome<PlanRequest>.Failed(problems);
        if ((parsed.GetValue(_change) * factor ?? outcome.SmallestWorthwhile?.Amount) is not { } change || change == 0 || !double.IsFinite(change))
            return new Problem("change-missing", new Place("--change"), $"no size of change is named for '{outcome.Variable}'", "a change that is not zero", "Add --change X, or 'smallest_worthwhile' to the protocol.");
        if (OutOfRange(parsed) is { } wrong)
            return wrong;
        return new PlanRequest
        {
            Protocol = protocol,
            Noise = noise,
            Change = change,
            ChangeBetweenPlayers = parsed.GetValue(_between) * factor,
            Sessions = sessions,
            Swings = swings,
            Players = parsed.GetValue(_players) ?? protocol.Players?.Count ?? 1,
            Power = parsed.GetValue(_power),
            Replications = parsed.GetValue(_replications),
        };
    }

    private static Option<string> Numbers(string name, string description, string usual) =>
        new(name) { Description = description, HelpName = "N,N,...", DefaultValueFactory = _ => usual };

    private Problem? OutOfRange(ParseResult parsed) => (parsed.GetValue(_between), parsed.GetValue(_power), parsed.GetValue(_replications), parsed.GetValue(_players) ?? 1) switch
    {
        ( >= 0 and < 1e6, > 0.05 and < 1, >= 100 and <= 100_000, >= 1 and <= 12) => null,
        _ => new Problem("plan-numbers", new Place("protocol plan"), "a number is out of range", "--change-sd of 0 or more, --power between 0.05 and 1, --replications from 100 to 100000, --players from 1 to 12", "Correct the option."),
    };

    private Outcome<OutcomeNoise> NoiseOf(ParseResult parsed, OutcomeMeasure outcome, double factor, TableStore? tables)
    {
        if (parsed.GetValue(_session) is { } session && parsed.GetValue(_swing) is { } swing)
        {
            return session is >= 0 and < 1e6 && swing is >= 0 and < 1e6 && session + swing > 0
                ? new OutcomeNoise(session * factor, swing * factor, "Given on the command line.", false)
                : new Problem("plan-numbers", new Place("--session-sd"), "a scatter that is negative, or no scatter at all", "standard deviations of 0 or more", "Correct the option.");
        }

        return OutcomeNoise.Of(outcome, tables) is { } known ? known : new Problem("noise-unknown", new Place("protocol plan"), $"nothing is known of the scatter of '{outcome.Variable}'",
            "a study with three sessions or more of a phase, 'noise:' of the outcome in the protocol, or both --session-sd and --swing-sd", "Add --session-sd X --swing-sd X.");
    }

    private Outcome<double> Factor(ParseResult parsed, Variable variable)
    {
        if (parsed.GetValue(_unit) is not { } given)
            return 1.0;
        var unit = UnitCatalogue.ParseCode(given) ?? UnitCatalogue.Parse(given);
        return unit is not null && variable.Unit is { } code && UnitConversion.Between(unit, UnitCatalogue.ParseCode(code)!) is { } conversion
            ? conversion.Factor
            : new Problem("unit-unknown", new Place("--unit"), $"'{given}' is no unit of '{variable.Name}'", $"a unit such as {variable.Unit}", "Write a UCUM code or a customary name.");
    }

    private static Outcome<IReadOnlyList<int>> Counts(ParseResult parsed, Option<string> option, int most)
    {
        var counts = new List<int>();
        foreach (var text in parsed.GetValue(option)!.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count < 1 || count > most)
                return new Problem("counts-unreadable", new Place(option.Name), $"'{text}'", FormattableString.Invariant($"whole numbers from 1 to {most}, joined by commas"), "For instance: 3,5,8.");
            counts.Add(count);
        }

        return counts.Count > 0 ? Outcome<IReadOnlyList<int>>.Of(counts) : new Problem("counts-unreadable", new Place(option.Name), "no number", "whole numbers joined by commas", "For instance: 3,5,8.");
    }
}
