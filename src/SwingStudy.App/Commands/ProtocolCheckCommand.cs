using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Protocols;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Planning;
using SwingStudy.Reporting.Documents;
using SwingStudy.Reporting.Figures;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol check</c>: is the protocol complete and consistent, and can it answer its question?</summary>
internal static class ProtocolCheckCommand
{
    public static Command Create(CommandRunner runner)
    {
        var file = new Argument<string?>("file") { Description = "A protocol file, or the name of a shipped one (default: the study's).", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("check", "Is the protocol complete and consistent, and can it answer its question?") { file };
        runner.Bind(command, (parsed, context) =>
        {
            var isOwn = parsed.GetValue(file) is null && File.Exists(context.Folder.StudyFile);
            var edited = isOwn ? LockedProtocol.EditedIn(context.Folder, context.Time) : null;
            if (!DeclarationPlaces.ProtocolFile(context.Folder, parsed.GetValue(file)).Succeeded(out var path, out var problems)
                || !DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out problems)
                || !ProtocolReader.Read(path, dictionary).Succeeded(out var protocol, out problems))
                return edited is null ? CommandResult.Failed(ExitCode.InvalidInput, problems) : CommandResult.Failed(ExitCode.Refused, [edited, .. problems]);
            return Check(protocol, dictionary, isOwn ? new TableStore(context.Folder, context.Time) : null, edited);
        });
        return command;
    }

    private static CommandResult Check(Protocol protocol, VariableDictionary dictionary, TableStore? tables, Problem? edited)
    {
        var detectable = ProtocolCheck.ComparesPhases(protocol) ? DetectableChange.Of(protocol, tables) : [];
        var judgement = Judgement(protocol);
        var plan = DrawPlan.Of(protocol);
        List<Problem> warnings = [.. ProtocolCheck.Review(protocol, dictionary).Warnings, .. detectable.Where(change => change.CanAnswer == false).Select(change => Undetectable(protocol, dictionary, change))];
        List<Problem> refusals = edited is null ? [] : [edited];
        return new CommandResult(
            edited is not null ? ExitCode.Refused : warnings.Count > 0 ? ExitCode.NeedsPerson : ExitCode.Done,
            new
            {
                protocol.Name,
                Version = protocol.Version.ToString(),
                Problems = refusals.Select(ProblemDocument.From),
                Warnings = warnings.Select(ProblemDocument.From),
                Standard = new { judgement.Edition, protocol.Standard.Title, judgement.Rating, judgement.Reasons, judgement.NotJudged, threshold = protocol.Standard.Of(protocol.Design) },
                Draw = plan is null ? null : new { plan.Kind, plan.Sessions, plan.IsJoint, plan.OrderDrawn, plan.Windows, plan.Assignments, plan.SmallestPossibleP },
                Detectable = detectable.Select(change => new { change.Outcome, change.Contrast, change.Detectable, change.Floor, change.Worthwhile, change.CanAnswer, change.Noise, unit = dictionary[change.Outcome].Unit }),
            },
            console =>
            {
                console.MarkupLineInterpolated($"Protocol {protocol.Name} {protocol.Version.ToString()}: {Counted.Of(refusals.Count, "problem")}, {Counted.Of(warnings.Count, "warning")}.");
                ProblemLines.Write(console, refusals);
                ProblemLines.Write(console, warnings);
                Write(console, protocol, dictionary, judgement, plan, detectable);
            });
    }

    private static void Write(
        IAnsiConsole console, Protocol protocol, VariableDictionary dictionary, StandardJudgement judgement, DrawPlan? plan, IReadOnlyList<DetectableChange> detectable)
    {
        console.MarkupLineInterpolated($"Design standards ({judgement.Edition}): {Words(judgement.Rating)}. A point is the mean of one session.");
        foreach (var reason in StandardReasons.Grouped(judgement.Reasons))
            console.MarkupLineInterpolated($"- {reason}");
        console.MarkupLineInterpolated($"Chance: {(plan is null ? "nothing is drawn." : string.Create(CultureInfo.InvariantCulture, $"{plan.Kind} over {plan.Sessions} sessions, one of {plan.Assignments:0} assignments{(plan.IsJoint ? " of all players together" : " of each player")}; no p can be below {plan.SmallestPossibleP:0.####}."))}");
        if (detectable.Count == 0)
            console.WriteLine("Detectable change: unknown, because no outcome has 'noise:' and no study its own scatter yet.");
        Listing(console, dictionary, detectable);
    }

    private static void Listing(IAnsiConsole console, VariableDictionary dictionary, IReadOnlyList<DetectableChange> detectable)
    {
        if (detectable.Count == 0)
            return;
        Terminal.Listing.Write(console, ["outcome", "contrast", "detectable", "with endless swings", "worthwhile", "can answer"], detectable.Select(change => (IReadOnlyList<string>)
        [
            dictionary[change.Outcome].Title, change.Contrast, Text(dictionary, change.Outcome, change.Detectable), Text(dictionary, change.Outcome, change.Floor),
            change.Worthwhile is { } worthwhile ? Text(dictionary, change.Outcome, worthwhile) : "not stated", change.CanAnswer switch { true => "yes", false => "NO", null => "" },
        ]), "");
        foreach (var source in detectable.GroupBy(change => change.Noise.Source, StringComparer.Ordinal))
            console.MarkupLineInterpolated($"Scatter of {string.Join("; ", source.Select(change => Comparisons.Lower(dictionary[change.Outcome].Title)).Distinct())}: {source.Key}");
    }

    private static StandardJudgement Judgement(Protocol protocol) => StandardJudgement.Of(
        protocol.Standard,
        protocol.Design,
        [
            .. Enumerable.Range(1, protocol.Design == DesignKind.MultipleBaseline ? protocol.Players?.Count ?? 1 : 1)
                .SelectMany(player => protocol.Phases.Select(phase => new PhasePoints(FormattableString.Invariant($"player {player}"), phase.Name, phase.Role, phase.MinimumSessions))),
        ],
        protocol.Randomization is { Kind: Randomization.Alternation } draw ? draw.LongestRun ?? Randomization.DefaultLongestRun : null);

    private static Problem Undetectable(Protocol protocol, VariableDictionary dictionary, DetectableChange change) => new(
        "worthwhile-undetectable",
        new Place(protocol.File, protocol.Outcomes.First(outcome => outcome.Variable == change.Outcome).Line),
        $"'{change.Outcome}' in '{change.Contrast}' can be told from noise from {Text(dictionary, change.Outcome, change.Detectable)} on",
        $"{Text(dictionary, change.Outcome, change.Worthwhile!.Value)} or less, the smallest worthwhile change",
        change.Floor > change.Worthwhile ? "Raise 'minimum_sessions'; more swings in one day cannot beat the scatter between days." : "Raise 'minimum_sessions' or 'minimum_swings'; 'swingstudy protocol plan' says by how much.");

    private static string Text(VariableDictionary dictionary, string outcome, double amount)
    {
        var display = new ValueDisplay(dictionary[outcome]);
        return ValueDisplay.WithUnit(ValueDisplay.Number(display.Difference(amount), Math.Max(2, display.Decimals)), display.Symbol);
    }

    private static string Words(StandardRating rating) => rating switch
    {
        StandardRating.Meets => "the plan meets what can be judged of them",
        StandardRating.WithReservations => "the plan meets them with reservations",
        StandardRating.DoesNot => "the plan does not meet them",
        _ => "they do not cover this design",
    };
}
