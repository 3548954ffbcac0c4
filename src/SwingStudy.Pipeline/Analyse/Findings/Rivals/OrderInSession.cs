using System.Globalization;
using SwingStudy.Pipeline.Analyse.Trends;

namespace SwingStudy.Pipeline.Analyse.Findings.Rivals;

/// <summary>Swings late in a session differ from early ones, by warming up, learning or fatigue, and the phases sample sessions unequally.</summary>
internal static class OrderInSession
{
    private const double Level = 0.05;
    private const double Much = 0.5;
    private const double Noticeable = 0.1;

    public static IEnumerable<Caveat> Find(ComparedPlayer player)
    {
        if (player.Estimate is not { } change || change == 0 || player.Term(TrendTerm.OrderInSession) is not { P: < Level } slope)
            yield break;
        var (before, after) = (player.In(player.From).Average(value => value.Order), player.In(player.To).Average(value => value.Order));
        var explained = slope.Value * (after - before) / change;
        var ten = player.Quantity.Text(10 * slope.Value, magnitude: true);
        var text = $"within sessions it {(slope.Value > 0 ? "rises" : "falls")} by about {ten} over ten swings (warming up, learning or fatigue)";
        if (explained >= Much)
        {
            yield return new Caveat("order-in-session", $"{text}, and {player.To.Plain} was measured {(after > before ? "later" : "earlier")} in its sessions", true,
                "compare the same places of the session in both phases, after the same warm-up");
        }
        else if (Math.Abs(explained) >= Noticeable)
        {
            yield return new Caveat("order-in-session", string.Create(CultureInfo.InvariantCulture, $"{text}; unequal places in the sessions explain about {Plain.Whole(100 * explained)} % of the change"), false);
        }
        else
        {
            yield return new Caveat("order-in-session", $"{text}; both phases were measured at like places, so that it does not explain the change", false);
        }
    }
}
