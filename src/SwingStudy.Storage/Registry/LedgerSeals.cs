using System.Data.Common;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Dapper;
using Microsoft.Data.Sqlite;

namespace SwingStudy.Storage.Registry;

/// <summary>Keeps people out of the ledger: a text that holds a pseudonym is entered as its hash under the person's own key. The text itself
/// stands beside the ledger, and goes, with the key, when the person is erased; the chain of hashes stays whole.</summary>
internal sealed partial class LedgerSeals(SqliteConnection connection)
{
    /// <summary>How a sealed text begins.</summary>
    internal const string Mark = "sealed:";
    private const int KeyBytes = 32;

    /// <summary>Words of people are sealed too where the act is about a person: a name may have slipped into them.</summary>
    private static readonly string[] FreeTexts = ["reason", "note", "remark"];

    /// <summary>The details with all that tells of a person sealed.</summary>
    internal string Seal(DbTransaction transaction, string details)
    {
        var people = connection.Query<string>("SELECT code FROM participants", transaction: transaction).ToHashSet(StringComparer.Ordinal);
        var node = JsonNode.Parse(details)!;
        var named = Named(details, people);
        return named.Length == 0 ? details : Sealed(transaction, node, people, named)!.ToJsonString();
    }

    /// <summary>Details as people may read them: texts of those who are still in the study stand in place of their hashes.</summary>
    internal string Open(string details)
    {
        if (!details.Contains(Mark, StringComparison.Ordinal))
            return details;
        return SealedText().Replace(details, match =>
            connection.QueryFirstOrDefault<string>("SELECT text FROM sealed_texts WHERE hash = @hash", new { hash = match.Groups["hash"].Value }) is { } text
                ? JsonSerializer.Serialize(text)[1..^1]
                : match.Value);
    }

    /// <summary>Hashes whose stored text does not have them: somebody changed the text by other means than this program.</summary>
    internal IEnumerable<string> Broken()
    {
        foreach (var group in connection.Query<(string Hash, string Participant, string Text)>("SELECT hash, participant, text FROM sealed_texts ORDER BY hash, participant").GroupBy(row => row.Hash))
        {
            var keys = group.Select(row => KeyOf(row.Participant, null)).ToList();
            if (keys.Contains(null) || group.Any(row => HashOf(row.Text, keys!) != row.Hash))
                yield return group.Key;
        }
    }

    private JsonNode? Sealed(DbTransaction transaction, JsonNode? node, HashSet<string> people, string[] named)
    {
        switch (node)
        {
            case JsonObject members:
                var copy = new JsonObject();
                foreach (var (name, value) in members)
                {
                    var isFree = FreeTexts.Contains(name) && value is JsonValue free && free.GetValueKind() == JsonValueKind.String;
                    copy[Text(transaction, name, people, [])] = isFree ? JsonValue.Create(Text(transaction, value!.GetValue<string>(), people, named)) : Sealed(transaction, value, people, named);
                }

                return copy;
            case JsonArray items:
                return new JsonArray([.. items.Select(item => Sealed(transaction, item, people, named))]);
            case JsonValue value when value.GetValueKind() == JsonValueKind.String:
                return JsonValue.Create(Text(transaction, value.GetValue<string>(), people, []));
            default:
                return node?.DeepClone();
        }
    }

    private string Text(DbTransaction transaction, string text, HashSet<string> people, string[] always)
    {
        string[] named = [.. Named(text, people).Union(always, StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        if (named.Length == 0 || text.StartsWith(Mark, StringComparison.Ordinal))
            return text;
        var hash = HashOf(text, named.Select(person => KeyOf(person, transaction)!));
        foreach (var person in named)
        {
            connection.Execute("INSERT INTO sealed_texts (hash, participant, text) VALUES (@hash, @person, @text) ON CONFLICT DO NOTHING",
                new { hash, person, text }, transaction);
        }

        return Mark + hash;
    }

    /// <summary>One key after the other: whoever loses one of the keys cannot compute the hash again.</summary>
    private static string HashOf(string text, IEnumerable<byte[]> keys)
    {
        var hash = Encoding.UTF8.GetBytes(text);
        foreach (var key in keys)
            hash = HMACSHA256.HashData(key, hash);
        return Convert.ToHexStringLower(hash);
    }

    private byte[]? KeyOf(string participant, DbTransaction? transaction)
    {
        if (transaction is not null)
        {
            connection.Execute("INSERT INTO person_keys (participant, key) VALUES (@participant, @key) ON CONFLICT DO NOTHING",
                new { participant, key = RandomNumberGenerator.GetBytes(KeyBytes) }, transaction);
        }

        return connection.ExecuteScalar<byte[]>("SELECT key FROM person_keys WHERE participant = @participant", new { participant }, transaction);
    }

    private static string[] Named(string text, HashSet<string> people) =>
        [.. Words().Matches(text).Select(match => match.Value).Where(people.Contains).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    [GeneratedRegex("sealed:(?<hash>[0-9a-f]{64})", RegexOptions.NonBacktracking)]
    private static partial Regex SealedText();

    /// <summary>Runs of ASCII letters and digits that begin with an upper-case letter: what a pseudonym can be.</summary>
    [GeneratedRegex("(?<![A-Za-z0-9])[A-Z][A-Za-z0-9]{1,15}(?![A-Za-z0-9])")]
    private static partial Regex Words();
}
