using SwingStudy.Domain.Problems;

namespace SwingStudy.Domain.Protocols;

/// <summary>What makes a protocol answer less than it seems to: allowed, and said before data.</summary>
internal static class ProtocolWeaknesses
{
    /// <summary>The weaknesses, in the order of the protocol's parts.</summary>
    public static IEnumerable<Problem> Of(Protocol protocol) => ProtocolCheck.ComparesPhases(protocol)
        ? [.. Sessions(protocol), .. Later(protocol), .. Chance(protocol), .. Conditions(protocol), .. Screening(protocol), .. Safety(protocol)]
        : [.. Repeats(protocol), .. Conditions(protocol), .. Screening(protocol)];

    private static IEnumerable<Problem> Sessions(Protocol protocol)
    {
        var threshold = protocol.Standard.Of(protocol.Design) ?? protocol.Standard.Designs[0];
        var compared = protocol.Contrasts.SelectMany(contrast => new[] { contrast.From, contrast.To }).ToHashSet(StringComparer.Ordinal);
        foreach (var phase in protocol.Phases.Where(phase => compared.Contains(phase.Name)))
        {
            var place = new Place(protocol.File, phase.Line);
            if (phase.MinimumSessions == 1)
            {
                yield return new(
                    "one-session",
                    place,
                    $"the compared phase '{phase.Name}' may have one session",
                    "two or more sessions: with one, a change cannot be told from a good or bad day, and the verdict stays 'cannot tell' unless other phases give the day-to-day scatter",
                    "Raise 'minimum_sessions'.");
            }
            else if (phase.MinimumSessions < threshold.Reservations && phase.Role == PhaseRole.Baseline)
            {
                yield return new(
                    "short-baseline",
                    place,
                    FormattableString.Invariant($"the baseline '{phase.Name}' may have {phase.MinimumSessions} sessions"),
                    FormattableString.Invariant($"{threshold.Reservations} or more, so that a trend and a chosen bad start can be seen"),
                    "Raise 'minimum_sessions'.");
            }
            else if (phase.MinimumSessions < threshold.Meets)
            {
                yield return new(
                    "few-points",
                    place,
                    FormattableString.Invariant($"the compared phase '{phase.Name}' may have {phase.MinimumSessions} sessions, each one point"),
                    FormattableString.Invariant($"{threshold.Meets} points a phase for the single-case standards ({protocol.Standard.Name}), {threshold.Reservations} with reservations"),
                    "Raise 'minimum_sessions', or accept the lower rating; more swings a session do not help.");
            }
        }
    }

    private static IEnumerable<Problem> Later(Protocol protocol)
    {
        foreach (var phase in protocol.Phases.Where(phase => phase.Role == PhaseRole.FollowUp))
        {
            if (phase.DaysAfter is null or < 1)
            {
                yield return new(
                    "retention-soon",
                    new(protocol.File, phase.Line),
                    $"the follow-up '{phase.Name}' may come on the same day",
                    "at least 1 day, commonly 7 to 28: what is there minutes later is performance, not learning",
                    "Set 'days_after'.");
            }

            if (phase.Cue is not null)
            {
                yield return new(
                    "retention-cued",
                    new(protocol.File, phase.Line),
                    $"a cue is given in the follow-up '{phase.Name}'",
                    "no cue and no feedback, else it is practice and no test of what lasted",
                    "Remove 'cue'.");
            }
        }
    }

    private static IEnumerable<Problem> Chance(Protocol protocol)
    {
        if (protocol.Randomization is not { } draw)
        {
            yield return new(
                "not-randomized",
                new(protocol.File),
                "nothing is drawn by chance",
                "a drawn start, order or alternation, so that a randomization test is possible",
                "Add 'randomization:', or accept that findings say 'not randomized'.");
            yield break;
        }

        if (RandomizationSize.Of(protocol) is { } count and >= 1 && 1 / count > 1 - protocol.Analysis.Confidence + 1e-12)
        {
            yield return new(
                "draw-too-small",
                new(protocol.File, draw.Line),
                FormattableString.Invariant($"the draw chooses among {count:0} assignments, so that no p value can be below {1 / count:0.###}"),
                FormattableString.Invariant($"{Math.Ceiling((1 / (1 - protocol.Analysis.Confidence)) - 1e-9):0} assignments or more for a test at {1 - protocol.Analysis.Confidence:0.###}"),
                "Widen the window, add players or sessions, or read p as description.");
        }
    }

    private static IEnumerable<Problem> Repeats(Protocol protocol)
    {
        var sessions = protocol.Phases.Sum(phase => phase.MinimumSessions);
        if (protocol.Design == DesignKind.Reliability && sessions < 2)
        {
            yield return new(
                "one-session",
                new(protocol.File, protocol.Phases[0].Line),
                "a player may be measured in one session",
                "two or more sessions, else day-to-day scatter stays unknown",
                "Raise 'minimum_sessions', or add a phase.");
        }
    }

    private static IEnumerable<Problem> Conditions(Protocol protocol)
    {
        if (protocol.FixedConditions.Count == 0)
        {
            yield return new(
                "nothing-fixed",
                new(protocol.File),
                "no condition is held fixed",
                "club, ball and surface at least: each of them can look like a change of the player",
                "Add 'fixed_conditions: [club, ball, surface]'.");
        }
    }

    private static IEnumerable<Problem> Screening(Protocol protocol)
    {
        foreach (var rule in protocol.Screening.Where(rule => rule is { Rule: "outside-typical", Action: not ScreeningAction.Keep }))
        {
            yield return new(
                "typical-excludes",
                new(protocol.File, rule.Line),
                "values outside the typical range do not count",
                "'action: keep': an unusual player is no fault of measurement",
                "Use 'impossible' or 'robust-outlier' to exclude.");
        }
    }

    private static IEnumerable<Problem> Safety(Protocol protocol)
    {
        if (protocol.StopRules.Count == 0)
            yield return new(
                "no-stop-rule",
                new(protocol.File),
                "no stop rule is set",
                "at least one on pain, as sports studies with repeated full swings usually have",
                "Add 'stop_rules:'.");
        if (protocol.Cautions.Count == 0)
            yield return new(
                "no-cautions",
                new(protocol.File),
                "no cautions are written",
                "what whoever runs the study has to watch, and whose rules come first",
                "Add 'cautions:'.");
    }
}
