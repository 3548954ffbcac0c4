using NodaTime;

namespace SwingStudy.Storage.Registry;

/// <summary>A human decision that the pipeline follows.</summary>
/// <param name="Id">Number; 0 before it is stored.</param>
/// <param name="Kind"><c>exclude</c>, <c>include</c>, <c>match</c>, <c>alias</c>, <c>withdraw</c>.</param>
/// <param name="Subject">What it is about, as a JSON object.</param>
/// <param name="Reason">Why, in the person's words.</param>
/// <param name="Actor">Who decided.</param>
/// <param name="At">When.</param>
public sealed record Decision(long Id, string Kind, string Subject, string Reason, string Actor, Instant At)
{
    /// <summary>Kind of the word of a player who left on earlier data: <c>earlier</c> is <c>keep</c> or <c>leave-out</c>.</summary>
    public const string Withdraw = "withdraw";
}
