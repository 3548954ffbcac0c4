using System.Globalization;
using SwingStudy.Domain.Findings;
using SwingStudy.Domain.Identifiers;
using SwingStudy.Pipeline.Analyse.Trends;
using SwingStudy.Statistics.Change;

namespace SwingStudy.Pipeline.Analyse.Findings;

/// <summary>What a verdict rests on, in sentences.</summary>
internal static class Evidence
{
    /// <summary>Why nothing can be told of a comparison; null when something can.</summary>
    public static Reason? WhyNot(ComparedPlayer player)
    {
        if (player.Change.CannotTell == CannotTell.PhaseWithoutSwings)
            return new Reason(Word.Of(CannotTell.PhaseWithoutSwings), CannotTellText.Of(player.Change)!);
        var days = player.Player.Days(player.Both.SelectMany(player.In));
        if (days.Count == 1)
        {
            return new Reason(ReasonCode.OneDay,
                $"all swings of {player.From.Plain} and {player.To.Plain} were struck on one day: warming up, effort, attention and the mood of that day changed along with the phase, so that no size of the change can tell them apart");
        }

        return player.Change.CannotTell == CannotTell.No ? null : new Reason(Word.Of(player.Change.CannotTell), CannotTellText.Of(player.Change)!);
    }

    /// <summary>The reasons for the verdict.</summary>
    public static IEnumerable<Reason> Of(PlayerChange player, Verdict verdict, FindingSettings settings, EstimateLookup effects)
    {
        if (player.Basis == Basis.Exploratory)
            yield return new Reason(ReasonCode.Exploratory, "the protocol does not plan this comparison: it can suggest a question for the next study and support nothing");
        if (player.Basis == Basis.Amended)
            yield return new Reason(ReasonCode.Amended, $"the comparison was {player.Outcome.Late[player.Contrast.Name]}: it can suggest and not support");
        if (player.CannotTell is { } why)
        {
            yield return why;
            yield break;
        }

        if (player.Basis == Basis.Planned && !settings.IsLocked)
            yield return new Reason(ReasonCode.NotLocked, "the protocol is not locked: nobody can show that this comparison was planned before data");
        foreach (var reason in Against(player, verdict, settings.Confidence))
            yield return reason;
        if (Randomized(player, settings) is { } test)
            yield return test;
        if (player.Compared.Term(TrendTerm.NonOverlap) is { } overlap && player.Estimate is not 0)
            yield return new Reason(ReasonCode.NonOverlap, Overlap(player, overlap.Value));
        if (Share(player, effects) is { } share)
            yield return share;
    }

    /// <summary>The test of the player's own draw; players drawn together are tested together.</summary>
    private static Reason? Randomized(PlayerChange player, FindingSettings settings)
    {
        if (!player.Contrast.IsWithCue || settings.DrawOf(player.Participant) is not { } draw)
            return null;
        if (draw.IsJoint)
            return new Reason(ReasonCode.Randomization, "the players were drawn together: the test over all of them stands in the study's finding");
        return player.Compared.Term(TrendTerm.RandomizationTest) is { } test
            ? new Reason(ReasonCode.Randomization, $"{P(test.P)}, {test.MethodDetail}")
            : player.Compared.Trends.WhyNot(player.Participant, player.Outcome.Name, player.Contrast.Name, TrendTerm.RandomizationTest) is { } reason ? new Reason(ReasonCode.Randomization, reason) : null;
    }

    private static IEnumerable<Reason> Against(PlayerChange player, Verdict verdict, double confidence)
    {
        if (!player.ExceedsNoise)
            yield return new Reason(ReasonCode.WithinNoise, "the interval includes zero: there may be no change at all");
        else if (!Judgement.SurvivesAdjustment(player, confidence))
        {
            yield return new Reason(ReasonCode.SeveralComparisons, string.Create(CultureInfo.InvariantCulture,
                $"one of {player.FamilySize} planned comparisons of {player.Outcome.Role} outcomes, among which one may pass by luck: adjusted {P(player.AdjustedP!.Value)}"));
        }

        if (player.ExceedsNoise && player.Outcome.Worthwhile is not null && !(player.ProbabilityWorthwhile >= confidence))
            yield return new Reason(ReasonCode.WorthwhileUnsure, "the change exceeds noise, but may be smaller than the smallest worthwhile one");
        if (player.Outcome.Worthwhile is null && player.ExceedsNoise)
            yield return new Reason(ReasonCode.WorthwhileUnstated, "the protocol names no smallest worthwhile change");
        if (player.Change.CanAnswer == false && player.Outcome.Worthwhile is not null && verdict != Verdict.Supported)
            yield return new Reason(ReasonCode.DesignTooCoarse, "even a change of the smallest worthwhile size could not be told from noise with these sessions and swings");
    }

    private static string Overlap(PlayerChange player, double share)
    {
        var better = player.Outcome.Better switch
        {
            Domain.Variables.Better.Higher or Domain.Variables.Better.Lower => "better",
            _ => "higher",
        };
        return string.Create(CultureInfo.InvariantCulture,
            $"of all pairs of a session in {player.Compared.From.Quoted} and one in {player.Compared.To.Quoted}, the later one is {better} in {100 * share:0} % (50 % is chance)");
    }

    private static Reason? Share(PlayerChange player, EstimateLookup effects)
    {
        if (player.Contrast.ShareOf is null || effects.Find(player.Participant, player.Outcome.Name, player.Contrast.Name, EffectMeasure.ShareKept) is not { } share)
            return null;
        var (code, verb) = player.Compared.To.IsTransfer ? (ReasonCode.ShareCarriedOver, "carries over") : (ReasonCode.ShareKept, "is still there");
        return new Reason(code, share.HasInterval
            ? string.Create(CultureInfo.InvariantCulture, $"{Plain.Whole(share.Value)} % of the change with the cue {verb} in {player.Compared.To.Quoted} (interval {Plain.Whole(share.Low)} to {Plain.Whole(share.High)} %)")
            : $"which share of the change with the cue {verb} in {player.Compared.To.Quoted} cannot be told, because the change with the cue may be none");
    }

    /// <summary>"p = 0.025": three decimals, or that it lies below 0.001.</summary>
    public static string P(double p) => p < 0.001 ? "p below 0.001" : "p = " + p.ToString("0.000", CultureInfo.InvariantCulture);
}
