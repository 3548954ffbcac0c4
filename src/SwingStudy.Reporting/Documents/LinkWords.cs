namespace SwingStudy.Reporting.Documents;

/// <summary>The words of the <c>method</c> column of <c>links</c> for people: how a record found its swing, or why it has none.</summary>
public static class LinkWords
{
    private static readonly Dictionary<string, string> Meanings = new(StringComparer.Ordinal)
    {
        ["session"] = "is the swing: from the device that gives the session its swings",
        ["time"] = "matched by time, the devices' clocks laid on each other",
        ["window"] = "a moment within the time around the swing",
        ["decision"] = "decided by a person",
        ["replaced"] = "replaced by a corrected record",
        ["no-session"] = "no session of the player at that time",
        ["missed-or-false"] = "no other device saw a swing then, or this one triggered by mistake",
        ["low-confidence"] = "fits in more than one way: a person has to decide",
        ["unknown-player"] = "nobody knows who swung: a person has to decide",
        ["outside-window"] = "a moment that belongs to no swing",
        ["zero"] = "empty plates, for their zero",
        ["quiet"] = "quiet standing, for body weight",
    };

    /// <summary>The meaning; a word that has none stands as it is.</summary>
    public static string Of(string method) => method.Length == 0 ? "no reason given" : Meanings.GetValueOrDefault(method) ?? method.Replace('-', ' ');
}
