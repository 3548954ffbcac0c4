using SwingStudy.Motion.Events;
using SwingStudy.Motion.Tests.Support;

namespace SwingStudy.Motion.Tests.Events;

/// <summary>Simulated sessions: the ball lies about a known place, marks and breaks err by known scatters.</summary>
public class BallPlaceTests
{
    private const double Speed = 40;
    private const int Sessions = 150;
    private const int Few = 50;

    [Theory]
    // Ball scatter in metres, scatter of marks in seconds, standard error of breaks, swings.
    [InlineData(0, 0.0005, 0.0003, 8)]
    [InlineData(0, 0.002, 0.0003, 12)]
    [InlineData(0.005, 0.0005, 0.0002, 12)]
    [InlineData(0.005, 0.002, 0.0004, 30)]
    [InlineData(0.02, 0.0002, 0.0003, 12)]
    [InlineData(0.02, 0.0005, 0.0002, 30)]
    [InlineData(0.1, 0.0005, 0.0002, 12)]
    public void WithBreaksItComesNearToWhatKnownScattersWouldGive(double ball, double mark, double broken, int swings)
    {
        var (errors, scores) = Errors(ball, mark, broken, swings);
        // Known scatters: mark, break and place weighed by their inverse variances, the place being known to the mean of all swings.
        var own = 1 / ((1 / (mark * mark)) + (1 / (broken * broken)));
        var between = (ball * ball) / (Speed * Speed);
        var shared = own * between / (own + between);
        var best = Math.Sqrt(shared + ((own + between) / swings * own / (own + between)));
        // Scatters that are estimated cost a fifth at most; where the place tells far more than the swing, few swings cannot show it, and it still errs by less than 0.6 of that.
        Assert.InRange(Rms(errors), 0, Math.Max(1.2 * best, 0.6 * Math.Sqrt(own)));
        // Never worse by more than a tenth than the swing alone, nor than the place alone by more than half the swing's own error.
        Assert.InRange(Rms(errors), 0, 1.1 * Math.Sqrt(own));
        Assert.InRange(Rms(errors), 0, Math.Sqrt(between + ((own + between) / swings) + (own / 4)));
        Assert.InRange(Covered(scores), 0.93, 1);
    }

    [Theory]
    [InlineData(0, 0.0005, 8)]
    [InlineData(0, 0.002, 12)]
    [InlineData(0.005, 0.0005, 12)]
    [InlineData(0.02, 0.0005, 12)]
    [InlineData(0.02, 0.0002, 30)]
    [InlineData(0.1, 0.0005, 12)]
    public void WithMarksAloneItErrsByNoMoreThanHalfTheScatterSeen(double ball, double mark, int swings)
    {
        var (errors, scores) = Errors(ball, mark, double.NaN, swings);
        // Half the root of the sum of both variances, whichever is the larger, and the error of the common place.
        var seen = Math.Sqrt((ball * ball / Speed / Speed) + (mark * mark));
        Assert.InRange(Rms(errors), 0, 1.1 * Math.Sqrt((seen * seen / 4) + (seen * seen / swings)));
        Assert.InRange(Covered(scores), 0.93, 1);
    }

    [Theory]
    // Ball scatter, scatter of marks, of addresses about their ball, swings.
    [InlineData(0, 0.0005, 0.005, 12)]
    [InlineData(0.005, 0.002, 0.005, 12)]
    [InlineData(0.02, 0.0005, 0.01, 12)]
    [InlineData(0.1, 0.0005, 0.01, 12)]
    [InlineData(0.1, 0.002, 0.03, 18)]
    // A player who sets the head down anyhow tells nothing by it.
    [InlineData(0.01, 0.0005, 0.2, 12)]
    public void WhereHeadsWereSetDownTellsHowAlikeTheBallsLay(double ball, double mark, double address, int swings)
    {
        var (errors, scores) = Errors(ball, mark, double.NaN, swings, address: address, sessions: Few);
        var seen = Math.Sqrt((ball * ball / Speed / Speed) + (mark * mark));
        Assert.InRange(Rms(errors), 0, 1.1 * Math.Sqrt((seen * seen / 4) + (seen * seen / swings)));
        // Known scatters: mark and address weigh the single place, the common one is known to the mean of all swings.
        var own = 1 / ((1 / (mark * mark)) + (1 / (address * address / Speed / Speed)));
        var between = ball * ball / Speed / Speed;
        var best = Math.Sqrt((own * between / (own + between)) + (seen * seen / swings));
        if (address < 0.1)
            Assert.InRange(Rms(errors), 0, 1.35 * best);
        // All swings of a session share the error of its place: so few sessions leave the coverage uncertain by three hundredths.
        Assert.InRange(Covered(scores), 0.86, 1);
    }

    [Fact]
    public void MarksThatComeLateAreSetRightByBreaks()
    {
        var (errors, scores) = Errors(0.003, 0.0003, 0.0003, 12, delayS: 0.003);
        Assert.InRange(Rms(errors), 0, 0.0002);
        Assert.InRange(Covered(scores), 0.93, 1);
    }

    [Fact]
    public void MarksSetToFramesGiveWayToThePlace()
    {
        // An even spread over frames of 240 Hz: the marks cannot be better than that, so the balls must lie alike.
        var frame = 1 / 240.0;
        var errors = new List<double>();
        for (var session = 0; session < Sessions; session++)
        {
            var frames = Enumerable.Range(0, 12).Select(i => (((i * 0.618) + (0.0831 * session)) % 1) - 0.5).ToArray();
            var place = BallPlace.Of([.. frames.Select(part => new ContactEvidence(Speed, Speed * part * frame, Speed * frame / Math.Sqrt(12), double.NaN, double.NaN))])!;
            errors.AddRange(place.Swings.Select(swing => swing.PlaceM / Speed));
        }

        Assert.InRange(Rms(errors), 0, 0.35 * frame / Math.Sqrt(12));
    }

    [Fact]
    public void ASwingThatTellsNothingHasTheCommonPlace()
    {
        var told = Enumerable.Range(0, 8).Select(i => Told(0.01 * (i - 3.5), double.NaN, double.NaN)).ToList();
        var place = BallPlace.Of([.. told, Told(double.NaN, double.NaN, double.NaN)])!;
        Assert.Equal(place.PlaceM, place.Swings[8].PlaceM, 12);
        Assert.Equal(0, place.PlaceM, 9);
        Assert.True(place.Swings[8].ScatterM > place.PlaceScatterM);
    }

    [Fact]
    public void FourSwingsTellNoPlace() => Assert.Null(BallPlace.Of([.. Enumerable.Range(0, 4).Select(i => Told(0.01 * i, double.NaN, double.NaN))]));

    [Fact]
    public void AnotherUnitOrOriginChangesNoWeight()
    {
        ContactEvidence[] some = [.. Enumerable.Range(0, 9).Select(i => Told(0.02 * Math.Sin(i * i), 0.013 * Math.Cos(i), 0.008))];
        var usual = BallPlace.Of(some)!;
        var moved = BallPlace.Of([.. some.Select(swing => swing with { MarkedAtM = swing.MarkedAtM + 7, BreakAtM = swing.BreakAtM + 7 })])!;
        for (var i = 0; i < some.Length; i++)
        {
            Assert.Equal(usual.Swings[i].PlaceM + 7, moved.Swings[i].PlaceM, 9);
            Assert.Equal(usual.Swings[i].ScatterM, moved.Swings[i].ScatterM, 9);
        }
    }

    [Fact]
    public void ABallMovedAsideMakesTwoPlaces()
    {
        var noise = new Noise(3);
        var groups = PlaceGroup.Of([.. Enumerable.Range(0, 16).Select(i => Told((i < 7 ? 0 : 0.15) + (0.02 * noise.Next()), double.NaN, double.NaN))]);
        Assert.Equal([7, 9], groups.Select(group => group.Members.Count));
        Assert.Equal([.. Enumerable.Range(0, 7)], groups[0].Members);
    }

    [Fact]
    public void OneNormalSampleIsOnePlace()
    {
        var (noise, parted, left, all) = (new Noise(4), 0, 0, 0);
        for (var session = 0; session < Sessions; session++)
        {
            var swings = 8 + (session % 23);
            var groups = PlaceGroup.Of([.. Enumerable.Range(0, swings).Select(_ => Told(0.02 * noise.Next(), double.NaN, double.NaN))]);
            parted += groups.Count > 1 ? 1 : 0;
            left += swings - groups.Sum(group => group.Members.Count);
            all += swings;
        }

        Assert.InRange(parted, 0, Sessions / 50);
        Assert.InRange(left, 0, all / 200);
    }

    [Fact]
    public void WhatIsFarOffIsJudgedByWhatAgrees()
    {
        var noise = new Noise(6);
        ContactEvidence[] some = [.. Enumerable.Range(0, 20).Select(_ => Told(0.02 * noise.Next(), 0.01 * noise.Next(), 0.01))];
        some[2] = some[2] with { MarkedAtM = 0.35 };
        some[5] = some[5] with { BreakAtM = 0.3 };
        some[8] = Told(0.41, 0.4, 0.01);
        some[19] = Told(0.5, double.NaN, double.NaN);
        var group = Assert.Single(PlaceGroup.Of(some));
        // A late mark and a wrong break are left out by themselves; a ball that lay elsewhere, and a mark that nothing confirms, with their swings.
        Assert.Equal([.. Enumerable.Range(0, 19).Where(i => i != 8)], group.Members);
        Assert.False(group.Evidence[2].HasMark);
        Assert.True(group.Evidence[2].HasBreak);
        Assert.True(group.Evidence[5].HasMark);
        Assert.False(group.Evidence[5].HasBreak);
    }

    /// <summary>Errors in seconds over simulated sessions, and errors in standard errors as they are stated.</summary>
    private static (List<double> Errors, List<double> Scores) Errors(double ball, double mark, double broken, int swings, double delayS = 0, double address = double.NaN, int sessions = Sessions)
    {
        var noise = new Noise(1);
        var (errors, scores) = (new List<double>(), new List<double>());
        for (var session = 0; session < sessions; session++)
        {
            double[] balls = [.. Enumerable.Range(0, swings).Select(_ => ball * noise.Next())];
            var place = BallPlace.Of([.. balls.Select(own => Told(
                own + (Speed * ((mark * noise.Next()) + delayS)), double.IsNaN(broken) ? double.NaN : own + (Speed * broken * noise.Next()), Speed * broken) with
                {
                    AddressAtM = double.IsNaN(address) ? double.NaN : own - 0.05 + (address * noise.Next()),
                })])!;
            for (var i = 0; i < swings; i++)
            {
                errors.Add((place.Swings[i].PlaceM - balls[i]) / Speed);
                scores.Add((place.Swings[i].PlaceM - balls[i]) / place.Swings[i].ScatterM);
            }
        }

        return (errors, scores);
    }

    private static ContactEvidence Told(double marked, double broken, double scatter) => new(Speed, marked, 0, broken, scatter);

    private static double Rms(List<double> values) => Math.Sqrt(values.Average(value => value * value));

    private static double Covered(List<double> scores) => scores.Count(score => Math.Abs(score) < 1.96) / (double)scores.Count;
}
