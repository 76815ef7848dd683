//! The clients of a shop.

use crate::codec::Encode;
use crate::collections::Table;
use crate::ids::id_of_name;

/// The names of the clients, each with the number of its jobs, by the [id of the name](id_of_name).
#[derive(Clone, Debug, PartialEq, Default, Encode)]
pub(crate) struct Clients {
    /// The names of one id are in order.
    names: Table<Vec<(String, u32)>>,
}

impl Clients {
    /// Says that a job is of another client now.
    pub fn replace(&mut self, before: Option<&str>, after: Option<&str>) {
        if before == after {
            return;
        }
        if let Some(name) = before {
            let names = self.names.get_or_insert_default(id_of_name(name));
            names.iter_mut().filter(|(other, _)| other == name).for_each(|(_, jobs)| *jobs = jobs.saturating_sub(1));
            names.retain(|(_, jobs)| *jobs > 0);
            if names.is_empty() {
                self.names.remove(&id_of_name(name));
            }
        }
        if let Some(name) = after {
            let names = self.names.get_or_insert_default(id_of_name(name));
            match names.binary_search_by(|(other, _)| other.as_str().cmp(name)) {
                Ok(place) => names[place].1 += 1,
                Err(place) => names.insert(place, (name.to_owned(), 1)),
            }
        }
    }

    /// The names, each once, in no particular order.
    pub fn iter(&self) -> impl Iterator<Item = &str> {
        self.names.values().flatten().map(|(name, _)| name.as_str())
    }

    /// Number of rows that were decoded or changed. Tests count them.
    pub fn rows_in_memory(&self) -> usize {
        self.names.rows_in_memory()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_client_is_one_while_it_has_a_job_also_beside_one_with_the_same_id() {
        let mut clients = Clients::default();
        let same = ["8yn0iYCKYHlIj4-BwPqk", "GReLUrM4wMqfg9yzV3KQ"];
        for name in [same[1], same[0], same[1], "Choir"] {
            clients.replace(None, Some(name));
        }
        let names = |clients: &Clients| {
            let mut names: Vec<String> = clients.iter().map(str::to_owned).collect();
            names.sort_unstable();
            names
        };
        assert_eq!(names(&clients), [same[0], "Choir", same[1]].map(str::to_owned));
        clients.replace(Some(same[1]), Some("Choir"));
        clients.replace(Some(same[0]), None);
        assert_eq!(names(&clients), ["Choir", same[1]].map(str::to_owned));
        clients.replace(Some(same[1]), None);
        clients.replace(Some("Choir"), None);
        clients.replace(Some("Choir"), None);
        assert_eq!(clients, Clients::default());
    }
}
